import { randomUUID } from 'node:crypto';
import type { GardenStory } from '../../../support/gardens.ts';
import { sent, type TestNursery } from '../../../support/nursery.ts';
import type { Edit } from './edit.ts';

const happenedOn = '2026-05-20';

export async function aBatch(nursery: TestNursery, story: GardenStory, { units = 10 } = {}) {
  const batchId = randomUUID();
  const trayId = await story.addContainer({ code: 'plug-72', kind: 'tray', volumeMl: 60, cells: 72 });
  const { propagation } = nursery.as('grower');
  await propagation.startBatch(
    sent({
      batchId,
      plantId: story.plantId,
      sourceId: story.sourceId,
      method: 'seed' as const,
      unit: 'cell' as const,
      containerId: trayId,
      units: 72,
      placeId: story.placeId,
      happenedOn: '2026-03-01',
      targetContainerId: story.containerId,
      cautiousUnits: units,
      readyOn: '2026-05-25',
    }),
  );
  await propagation.countBatch(
    sent({ batchId, emergedUnits: 60, countKind: 'counted' as const, happenedOn: '2026-04-01' }),
  );
  return { batchId, trayId };
}

/** Edits of batches and of the trays they stand in. */
export const batchEdits: Record<string, Edit> = {
  'a batch expected to give more': async (nursery, story) => {
    const { batchId } = await aBatch(nursery, story);
    await story.order([{ units: 30 }]);
    return [20, 5].map(
      (cautiousUnits) => () =>
        nursery
          .as('grower')
          .propagation.setBatchForecast(
            sent({ batchId, happenedOn, targetContainerId: story.containerId, cautiousUnits, readyOn: '2026-05-25' }),
          ),
    );
  },
  'a batch ready later': async (nursery, story) => {
    const { batchId } = await aBatch(nursery, story);
    await story.order([{ units: 8 }], { dueOn: '2026-06-01' });
    return ['2026-06-02', '2026-06-01', null].map(
      (readyOn) => () =>
        nursery
          .as('grower')
          .propagation.setBatchForecast(
            sent({ batchId, happenedOn, targetContainerId: story.containerId, cautiousUnits: 10, readyOn }),
          ),
    );
  },
  'a batch meant for another pot': async (nursery, story) => {
    const { batchId } = await aBatch(nursery, story);
    const bigId = await story.addContainer({ code: 'big-4l', volumeMl: 4000 });
    await story.order([{ units: 8 }]);
    return [bigId, story.containerId].map(
      (targetContainerId) => () =>
        nursery
          .as('grower')
          .propagation.setBatchForecast(
            sent({ batchId, happenedOn, targetContainerId, cautiousUnits: 10, readyOn: '2026-05-25' }),
          ),
    );
  },
  'a batch closed': async (nursery, story) => {
    const { batchId } = await aBatch(nursery, story);
    await story.order([{ units: 8 }]);
    let entryId = '';
    return [
      async () =>
        ({ entryId } = await nursery
          .as('grower')
          .propagation.closeBatch(sent({ batchId, writeOffCause: 'failed' as const, happenedOn }))),
      () => nursery.as('grower').stock.reverseEntry(sent({ entryId })),
    ];
  },
  'a rule for the tray': async (nursery, story) => {
    const { trayId } = await aBatch(nursery, story);
    await story.order([{ units: 8 }]);
    const ruleId = randomUUID();
    const { potLife } = nursery.as('grower');
    return [
      () =>
        potLife.addRule(
          sent({
            ruleId,
            basis: 'confined' as const,
            span: 'P55D',
            reach: { plantId: story.plantId, containerId: trayId },
            winterCarry: null,
          }),
        ),
      () => potLife.editRule(sent({ ruleId, span: 'P1Y', winterCarry: null })),
    ];
  },
};
