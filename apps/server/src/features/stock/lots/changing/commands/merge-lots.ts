import { stock } from '@rootclock/contracts';
import { clocksAfter, earliestOf, FIELD, lotAt, lotDifferences, moved, readinessTogether } from '@rootclock/domain';
import { found, refuse } from '../../../../../refusal.ts';
import { command } from '../../../../../trpc/operation.ts';
import { openEntry, postMovements, requireSince } from '../../../ledger/post.ts';
import { inheritHolds } from '../../holding-store.ts';
import { requireOpenPlaces } from '../../open-places.ts';
import { insertLots, loadLots } from '../../store.ts';
import { clocksOf, nameLots } from '../become.ts';

/** Leftovers get one new label; the earliest day of each clock governs. What is staged for an order stays with its old lot. */
export const mergeLots = command({
  name: 'mergeLots',
  input: stock.mergeLots,
  roles: FIELD,
  run: async (context, { lotIds, into, happenedOn, note }) => {
    const lots = await loadLots(context, [...new Set(lotIds)], 'lotIds');
    const differences = lotDifferences(lots);
    if (differences.length > 0)
      refuse('lots-differ', { lots: lots.map(({ code }) => code), in: differences }, 'lotIds');
    for (const lot of lots) {
      requireSince(happenedOn, lot.pottedOn);
      if (lot.balances.length === 0) refuse('nothing-there', { of: lot.code }, 'lotIds');
    }
    if (into.placeId) await requireOpenPlaces(context, [into.placeId], 'into.placeId');
    const first = found(lots[0], 'lot', 'lotIds');
    const entryId = await openEntry(context, { kind: 'merge', happenedOn, note });
    const standing = lots.flatMap((lot) =>
      lot.balances.map(({ placeId, units }) => ({ lotId: lot.id, placeId, units })),
    );
    const named = await nameLots(
      context,
      first,
      [
        {
          id: into.lotId,
          containerId: first.containerId,
          placeId: into.placeId ?? '',
          units: 0,
          clocks: clocksAfter({ kind: 'merge', clocks: lots.map(clocksOf) }),
          pottedOn: earliestOf(...lots.map((lot) => lot.pottedOn)),
          countKind: lots.some((lot) => lot.countKind !== 'counted') ? 'estimated' : 'counted',
          ...readinessTogether(lots),
        },
      ],
      happenedOn,
    );
    await insertLots(context, entryId, named);
    await postMovements(
      context,
      entryId,
      standing.map(({ lotId, placeId, units }) =>
        moved(units, lotAt(lotId, placeId), lotAt(into.lotId, into.placeId ?? placeId)),
      ),
    );
    await inheritHolds(context, entryId);
    return { entryId, lots: named.map(({ id, code }) => ({ lotId: id, code })) };
  },
});
