import type { propagation } from '@rootclock/contracts';
import { batchAt, moved, type MovementDraft } from '@rootclock/domain';
import type * as z from 'zod/mini';
import { refuse } from '../../../../refusal.ts';
import type { ReadContext } from '../../../../trpc/operation.ts';
import { drawFromLot } from '../../../stock/lots/draw.ts';
import { loadOpenBatch } from '../open.ts';
import type { BatchFacts, PlantFacts, SourceFacts } from '../store.ts';

type FromPacks = NonNullable<z.output<typeof propagation.startBatch>['fromPacks']>;

/** The packs another batch is drawn from: of the same plant and source, begun before, and not closed yet. */
export async function loadPacks(
  context: ReadContext,
  from: FromPacks,
  into: { plant: PlantFacts; source: SourceFacts; happenedOn: string },
): Promise<BatchFacts> {
  const packs = await loadOpenBatch(context, from.batchId, into.happenedOn, 'fromPacks.batchId');
  if (packs.unit !== 'pack') refuse('not-packs', { batch: packs.code, unit: packs.unit }, 'fromPacks.batchId');
  if (packs.plantId !== into.plant.id)
    refuse('packs-of-other-plant', { batch: packs.code, plant: packs.scientificName }, 'fromPacks.batchId');
  if (packs.sourceId !== into.source.id)
    refuse('packs-of-other-source', { batch: packs.code, source: packs.sourceCode }, 'fromPacks.batchId');
  return packs;
}

/**
 * Seed leaves its packs for the new batch: both sides are counted, packs out and units in. Packs that stay in use give seed without a pack
 * leaving. Where they are drawn at several places the new units are booked once, with the first of them.
 */
export function drawPacks(
  packs: BatchFacts,
  from: FromPacks,
  into: { batchId: string; placeId: string; units: number },
): MovementDraft[] {
  const to = batchAt(into.batchId, into.placeId);
  if (from.units === 0) {
    const [first] = packs.balances.filter(({ placeId }) => !from.placeId || placeId === from.placeId);
    if (!first) refuse('nothing-left', { batch: packs.code }, 'fromPacks.batchId');
    return [{ ...moved(into.units, batchAt(packs.id, first.placeId), to), fromUnits: 0 }];
  }
  const drawn = drawFromLot(packs, from.units, from.placeId, 'fromPacks.units');
  return drawn.map(({ placeId, units }, at) => ({
    from: batchAt(packs.id, placeId),
    to,
    fromUnits: units,
    toUnits: at === 0 ? into.units : 0,
  }));
}
