import { stock } from '@rootclock/contracts';
import { clocksAfter, FIELD } from '@rootclock/domain';
import { command } from '../../../../../trpc/operation.ts';
import { loadLot } from '../../store.ts';
import { becomeLots, clocksOf, requirePots, requirePotted, sumUnits } from '../become.ts';

/** The container's clock starts anew, the confined one goes on: a bigger pot does not make a taproot younger. */
export const potUpLot = command({
  name: 'potUpLot',
  input: stock.potUpLot,
  roles: FIELD,
  run: async (context, { lotId, placeId, into, happenedOn, note }) => {
    const lot = await loadLot(context, lotId);
    requirePotted(lot);
    await requirePots(
      context,
      into.map((next) => next.containerId),
    );
    const clocks = clocksAfter({ kind: 'pot-up', clocks: clocksOf(lot), on: happenedOn });
    return becomeLots(context, {
      kind: 'pot-up',
      happenedOn,
      note,
      leaving: [{ lot, units: sumUnits(into), placeId, field: 'into.0.units' }],
      becoming: into.map(({ lotId: id, ...next }) => ({ ...next, id, clocks, pottedOn: happenedOn })),
    });
  },
});
