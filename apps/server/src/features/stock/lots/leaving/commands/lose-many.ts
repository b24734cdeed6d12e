import { stock } from '@rootclock/contracts';
import { FIELD, lotAt, moved, outside, type PlaceBalance, unitsOfPercent } from '@rootclock/domain';
import { command } from '../../../../../trpc/operation.ts';
import { postEntry, requireSince } from '../../../ledger/post.ts';
import { drawFromLot } from '../../draw.ts';
import { loadSelectedLots } from '../../selection.ts';
import type { LotFacts } from '../../store.ts';
import { askIfDormant } from '../looks-dead.ts';

/** A share is taken of what stands at each place by itself: frost takes a tenth of every bench and not all of one. */
function lossOf(lot: LotFacts, units: number | null | undefined, percent: number | null | undefined): PlaceBalance[] {
  if (units) return drawFromLot(lot, units, null);
  return lot.balances.map((balance) => ({
    placeId: balance.placeId,
    units: unitsOfPercent(balance.units, percent ?? 0),
  }));
}

export const loseMany = command({
  name: 'loseMany',
  input: stock.loseMany,
  roles: FIELD,
  run: async (context, { units, percent, cause, happenedOn, note, confirmed, ...selection }) => {
    const { lots } = await loadSelectedLots(context, selection);
    for (const lot of lots) requireSince(happenedOn, lot.pottedOn);
    askIfDormant(lots, { cause, happenedOn, confirmed });
    const losses = lots.flatMap((lot) =>
      lossOf(lot, units, percent).map((lost) => moved(lost.units, lotAt(lot.id, lost.placeId), outside('lost'))),
    );
    const entryId = await postEntry(
      context,
      { kind: 'lose', happenedOn, cause, note, details: percent ? { percent } : { units } },
      losses,
    );
    return { entryId, lots: lots.length, units: losses.reduce((sum, { fromUnits }) => sum + fromUnits, 0) };
  },
});
