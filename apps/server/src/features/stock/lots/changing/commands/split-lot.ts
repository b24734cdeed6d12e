import { stock } from '@rootclock/contracts';
import { clocksAfter, FIELD } from '@rootclock/domain';
import { command } from '../../../../../trpc/operation.ts';
import { loadLot } from '../../store.ts';
import { becomeLots, clocksOf, sumUnits } from '../become.ts';

/** Both clocks and the checked root ball go on: only the label is new. */
export const splitLot = command({
  name: 'splitLot',
  input: stock.splitLot,
  roles: FIELD,
  run: async (context, { lotId, placeId, into, happenedOn, note }) => {
    const lot = await loadLot(context, lotId);
    const clocks = clocksAfter({ kind: 'split', clocks: clocksOf(lot) });
    const { pottedOn, pottedPrecision, countKind, readyOn, rootCheckedOn, containerId } = lot;
    return becomeLots(context, {
      kind: 'split',
      happenedOn,
      note,
      leaving: [{ lot, units: sumUnits(into), placeId, field: 'into.0.units' }],
      becoming: into.map(({ lotId: id, ...next }) => ({
        ...next,
        id,
        containerId,
        clocks,
        pottedOn,
        pottedPrecision,
        countKind,
        readyOn,
        rootCheckedOn,
      })),
    });
  },
});
