import { found, refuse } from '../../../../refusal.ts';
import type { CommandContext } from '../../../../trpc/operation.ts';
import { openEntry } from '../../ledger/post.ts';
import { reIdentification } from '../../reversal/details.ts';
import { type Kin, loadDescent, loadPlantedGardens, loadPlantName, type PlantedGarden, setPlants } from './store.ts';

export interface ReIdentified {
  entryId: string;
  lots: number;
  batches: number;
  /** Somebody has to be told: these gardens hold plants under the wrong name. */
  gardens: PlantedGarden[];
}

/**
 * Says that a lot or a source, with all that came from it, is another plant. Codes stay as they are on the labels. What was said to be
 * yet another plant before keeps that name; promises for plants that turn out not to be wanted are given up by the replan.
 */
export async function reIdentify(
  context: CommandContext,
  start: { kind: 'lot' | 'source'; id: string },
  { plantId, happenedOn, note }: { plantId: string; happenedOn: string; note: string },
): Promise<ReIdentified> {
  const descent = await loadDescent(context, start);
  const self = found(
    descent.find(({ kind, id }) => kind === start.kind && id === start.id),
    start.kind,
    `${start.kind}Id`,
  );
  const plant = found(await loadPlantName(context, plantId), 'plant', 'plantId');
  if (self.plantId === plantId) refuse('already-that-plant', { of: self.code, plant }, 'plantId');
  const mistaken = descent.filter((kin) => kin.plantId === self.plantId);
  const entryId = await openEntry(context, {
    kind: 're-identify',
    happenedOn,
    note,
    details: reIdentification.written({
      toPlantId: plantId,
      from: mistaken.map(({ kind, id, plantId: before }) => ({ kind, id, plantId: before })),
    }),
    subjects: mistaken.map(({ kind, id }) => ({ kind, id })),
  });
  await setPlants(
    context,
    mistaken.map(({ kind, id }) => ({ kind, id, plantId })),
  );
  const ofKind = (kind: Kin['kind']) => mistaken.filter((kin) => kin.kind === kind);
  const gardens = await loadPlantedGardens(
    context,
    ofKind('lot').map(({ id }) => id),
  );
  return { entryId, lots: ofKind('lot').length, batches: ofKind('batch').length, gardens };
}
