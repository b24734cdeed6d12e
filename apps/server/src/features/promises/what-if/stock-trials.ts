import { type BatchEntry, batchState } from '@rootclock/domain';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadBatchEntries } from '../../propagation/batches/history/store.ts';
import { loadOpenBatch, standingUnits } from '../../propagation/batches/open.ts';
import { forecastFor } from '../../propagation/batches/starting/expected.ts';
import type { BatchFacts } from '../../propagation/batches/store.ts';
import { drawFromLot } from '../../stock/lots/draw.ts';
import { type LotFacts, loadLot } from '../../stock/lots/store.ts';
import { loadScope } from '../allocation/load.ts';
import type { ScopeSeed } from '../allocation/store.ts';
import { type Restood, restand, without } from './stands.ts';
import { loadStands, type Stand } from './store.ts';
import type { ChangeOf, Trial } from './trial.ts';

type Standing = Pick<LotFacts, 'code' | 'balances'>;

/** What is lost where: so many units, or all that stands, refused as the command would refuse it. */
function drawn(standing: Standing, units: number | null, placeId: string | null) {
  const here = standing.balances
    .filter((balance) => placeId === null || balance.placeId === placeId)
    .reduce((sum, balance) => sum + balance.units, 0);
  // Of nothing even one unit is more than there is, which is what the refusal then says.
  return drawFromLot(standing, units ?? Math.max(1, here), placeId);
}

const standsOf = async (context: ReadContext, id: string): Promise<Stand[]> =>
  (await loadStands(context, [id])).get(id) ?? [];

async function trialOf(context: ReadContext, seed: ScopeSeed, supplyId: string, change: Restood): Promise<Trial> {
  const before = await loadScope(context, seed);
  return {
    before,
    after: await restand(context, before, new Map([[supplyId, change]])),
    own: new Set(),
    keepsRank: null,
  };
}

export async function loseLot(context: ReadContext, { lotId, units, placeId }: ChangeOf<'lose-lot'>): Promise<Trial> {
  const lost = drawn(await loadLot(context, lotId), units, placeId);
  return trialOf(context, { lots: [lotId] }, lotId, { stands: without(await standsOf(context, lotId), lost) });
}

export async function loseBatch(
  context: ReadContext,
  { batchId, units, placeId }: ChangeOf<'lose-batch'>,
): Promise<Trial> {
  const batch = await loadOpenBatch(context, batchId, context.today);
  const lost = drawn(batch, units, placeId);
  const unitsOut = lost.reduce((sum, each) => sum + each.units, 0);
  return trialOfBatch(context, batch, { kind: 'lose', unitsOut }, without(await standsOf(context, batchId), lost));
}

export async function changeBatch(
  context: ReadContext,
  { batchId, cautiousUnits, readyOn }: ChangeOf<'change-batch'>,
): Promise<Trial> {
  const batch = await loadOpenBatch(context, batchId, context.today);
  const forecast = forecastFor(
    { ...batch, standing: standingUnits(batch) },
    { targetContainerId: batch.targetContainerId, cautiousUnits, readyOn },
  );
  return trialOfBatch(context, batch, { kind: 'observe', forecast }, await standsOf(context, batchId));
}

/** The batch as its entries would make it with one more, by the same function that makes it so after a command. */
async function trialOfBatch(
  context: ReadContext,
  batch: BatchFacts,
  more: Pick<BatchEntry, 'kind'> & Partial<BatchEntry>,
  stands: readonly Stand[],
): Promise<Trial> {
  const entries = await loadBatchEntries(context, batch.id);
  const entry: BatchEntry = {
    entryId: '',
    version: 1 + Math.max(0, ...entries.map(({ version }) => version)),
    starts: false,
    happenedOn: context.today,
    cause: null,
    unitsOut: 0,
    unitsIn: 0,
    pottedPlants: 0,
    emergedUnits: null,
    forecast: null,
    firstAlive: null,
    isSecondWinter: false,
    stagePosition: null,
    ...more,
  };
  const { forecast } = batchState(
    batch,
    [...entries, entry],
    stands.reduce((sum, { units }) => sum + units, 0),
  );
  const expected = {
    units: forecast?.cautiousUnits ?? batch.cautiousUnits,
    readyOn: forecast ? forecast.readyOn : batch.readyOn,
  };
  return trialOf(context, { batches: [batch.id] }, batch.id, { stands, expected });
}
