import { stock } from '@rootclock/contracts';
import { clocksAfter, FIELD, lotAt, moved, outside } from '@rootclock/domain';
import { refuse } from '../../../../../refusal.ts';
import { command } from '../../../../../trpc/operation.ts';
import { loadLot } from '../../store.ts';
import { becomeLots, requirePots } from '../become.ts';

/**
 * Plants in a bed are often only estimated. More dug than the estimate is booked as found in the same entry: the plants are there, and
 * refusing them would only make the grower lie.
 */
export const liftFromBed = command({
  name: 'liftFromBed',
  input: stock.liftFromBed,
  roles: FIELD,
  run: async (context, { lotId, placeId, units, into, happenedOn, note }) => {
    const lot = await loadLot(context, lotId);
    if (lot.containerKind !== 'ground') refuse('not-in-ground', { lot: lot.code }, 'lotId');
    await requirePots(
      context,
      into.map(({ containerId }) => containerId),
    );
    const bed =
      lot.balances.find((balance) => balance.placeId === placeId) ??
      (lot.balances.length === 1 && !placeId ? lot.balances[0] : undefined);
    const extra = lot.countKind === 'estimated' && bed ? Math.max(0, units - bed.units) : 0;
    const seen =
      extra > 0 && bed
        ? { ...lot, balances: lot.balances.map((balance) => (balance === bed ? { ...bed, units } : balance)) }
        : lot;
    return becomeLots(context, {
      kind: 'pot',
      happenedOn,
      note,
      details: { lifted: true },
      leaving: [{ lot: seen, units, placeId, field: 'units' }],
      becoming: into.map(({ lotId: id, ...next }) => ({
        ...next,
        id,
        clocks: clocksAfter({ kind: 'lift', on: happenedOn }),
        pottedOn: happenedOn,
      })),
      turnedUp: extra > 0 && bed ? [moved(extra, outside('found'), lotAt(lot.id, bed.placeId))] : [],
    });
  },
});
