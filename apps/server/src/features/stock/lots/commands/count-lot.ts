import { stock } from '@rootclock/contracts';
import { FIELD, lotAt, moved, outside, recount } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command, type CommandContext } from '../../../../trpc/operation.ts';
import { postEntry, requireSince } from '../../ledger/post.ts';
import { lotCount } from '../../reversal/details.ts';
import { countedAs, lastPlaceOf } from '../looking-store.ts';
import { type LotFacts, loadLot, loadPlaces } from '../store.ts';

/** Where the count was taken: the place named, or the only one, or where the last of an empty lot stood. */
async function countedPlace(
  context: CommandContext,
  lot: LotFacts,
  placeId: string | null | undefined,
): Promise<string> {
  if (placeId && lot.balances.some((balance) => balance.placeId === placeId)) return placeId;
  if (placeId) return found((await loadPlaces(context, [placeId]))[0], 'place', 'placeId').id;
  const [only, ...others] = lot.balances;
  if (only && others.length === 0) return only.placeId;
  if (!only) return found(await lastPlaceOf(context, lot.id), 'place', 'placeId');
  return refuse(
    'which-place',
    {
      of: lot.code,
      places: lot.balances.map(({ placeId: id, placeCode, units }) => ({ placeId: id, code: placeCode, units })),
    },
    'placeId',
  );
}

/** What stands there is what was counted: never refused, for a promise or anything else. A cause may follow as a loss of its own. */
export const countLot = command({
  name: 'countLot',
  input: stock.countLot,
  roles: FIELD,
  run: async (context, { lotId, placeId, countedUnits, countKind, happenedOn, note }) => {
    const lot = await loadLot(context, lotId);
    requireSince(happenedOn, lot.pottedOn);
    const at = await countedPlace(context, lot, placeId);
    const expectedUnits = lot.balances.find((balance) => balance.placeId === at)?.units ?? 0;
    const result = recount(expectedUnits, countedUnits);
    const here = lotAt(lot.id, at);
    const movements =
      result.kind === 'as-expected'
        ? []
        : [
            result.kind === 'found'
              ? moved(result.units, outside('found'), here)
              : moved(result.units, here, outside('unexplained')),
          ];
    const entryId = await postEntry(
      context,
      {
        kind: 'count',
        happenedOn,
        note,
        subjects: [{ kind: 'lot', id: lot.id }],
        details: lotCount.written({
          placeId: at,
          expectedUnits,
          countedUnits,
          countKind,
          before: { countKind: lot.countKind },
        }),
      },
      movements,
      countKind === lot.countKind ? [] : [countedAs(context, lot.id, countKind)],
    );
    return { entryId, expectedUnits, countedUnits };
  },
});
