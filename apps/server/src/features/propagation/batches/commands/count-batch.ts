import { propagation } from '@rootclock/contracts';
import {
  batchAt,
  countsOf,
  FIELD,
  isUnitOnePlant,
  leftSince,
  missingAt,
  moved,
  outside,
  type PlaceBalance,
  standingOn,
} from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { postEntry } from '../../../stock/ledger/post.ts';
import { settleBatch } from '../history/settle.ts';
import { loadBatchEntries } from '../history/store.ts';
import { loadBatchSeen, standingUnits } from '../open.ts';
import { insertCount } from '../store.ts';

/** A lower count is never refused: of cells and pieces what is missing leaves the ledger as unexplained, of trays and packs the count alone says it. */
export const countBatch = command({
  name: 'countBatch',
  input: propagation.countBatch,
  roles: FIELD,
  run: async (context, input) => {
    const batch = await loadBatchSeen(context, input.batchId, input.happenedOn);
    const entries = await loadBatchEntries(context, batch.id);
    const standing = standingUnits(batch);
    const stoodThen = standingOn(entries, standing, input.happenedOn);
    const { unit } = batch;
    if (isUnitOnePlant(unit) && input.emergedUnits > stoodThen) {
      refuse(
        'more-emerged-than-units',
        { emerged: input.emergedUnits, standing: stoodThen, unit, batch: batch.code },
        'emergedUnits',
      );
    }
    const counts = countsOf(entries);
    const isLatest = !counts.some((count) => count.happenedOn > input.happenedOn);
    const last = counts.filter((count) => count.happenedOn <= input.happenedOn).at(-1);
    // A count of an earlier day than the last one only fills in the course: what is missing was booked with the later one.
    const missing =
      last && isLatest
        ? missingAt(input.emergedUnits, {
            unit,
            lastCounted: last.emergedUnits,
            since: leftSince(entries, last.version, input.happenedOn),
            standingUnits: standing,
          })
        : 0;
    const booked = isUnitOnePlant(unit) ? takeAnywhere(batch.balances, missing) : [];
    const entryId = await postEntry(
      context,
      { kind: 'count', happenedOn: input.happenedOn, note: input.note, subjects: [{ kind: 'batch', id: batch.id }] },
      booked.map(({ placeId, units }) => moved(units, batchAt(batch.id, placeId), outside('unexplained'))),
    );
    await insertCount(context, entryId, {
      batchId: batch.id,
      countedOn: input.happenedOn,
      countKind: input.countKind,
      emergedUnits: input.emergedUnits,
      unexplainedUnits: missing,
    });
    await settleBatch(context, batch.id);
    return { entryId, unexplainedUnits: missing };
  },
});

/** The count is of the whole batch, so nobody knows where the missing ones stood: they are taken where most stand. */
function takeAnywhere(balances: readonly PlaceBalance[], units: number): PlaceBalance[] {
  let left = units;
  const taken: PlaceBalance[] = [];
  for (const balance of [...balances].sort((a, b) => b.units - a.units)) {
    const here = Math.min(left, balance.units);
    if (here > 0) taken.push({ placeId: balance.placeId, units: here });
    left -= here;
  }
  return taken;
}
