import { randomUUID } from 'node:crypto';
import type { GardenStory } from './gardens.ts';
import { sent, type TestNursery } from './nursery.ts';

/** Four packs of the story's seed in a cold frame since 1 February; `draw` sows one of them in cells that are to become the story's item. */
export async function packsInTheCold(nursery: TestNursery, story: GardenStory) {
  const { propagation } = nursery.as('grower');
  const coldId = await story.addPlace({ code: 'COLD', kind: 'cold-frame' });
  const trayId = await story.addContainer({ code: 'plug-50', kind: 'tray', volumeMl: 110, cells: 50 });
  const packsId = randomUUID();
  const seed = { plantId: story.plantId, sourceId: story.sourceId, method: 'seed' as const };
  const packs = { unit: 'pack' as const, containerId: null, units: 4, placeId: coldId, happenedOn: '2026-02-01' };
  await propagation.startBatch(sent({ ...seed, ...packs, batchId: packsId }));

  async function draw(happenedOn: string, forecast: { cautiousUnits: number; readyOn: string }): Promise<string> {
    const batchId = randomUUID();
    const cells = { unit: 'cell' as const, containerId: trayId, units: 50, placeId: story.placeId };
    await propagation.startBatch(
      sent({
        ...seed,
        ...cells,
        ...forecast,
        batchId,
        fromPacks: { batchId: packsId, units: 1 },
        happenedOn,
        targetContainerId: story.containerId,
      }),
    );
    return batchId;
  }
  return { coldId, packsId, draw };
}
