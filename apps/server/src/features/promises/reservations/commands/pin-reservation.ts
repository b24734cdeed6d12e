import { promises } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadScope } from '../../allocation/load.ts';
import { outlook, requireAccepted } from '../../allocation/outlook.ts';
import { saveReservations } from '../../allocation/store.ts';
import { planFirst } from '../../solving/plan-first.ts';
import { requireOpenLine } from '../open-line.ts';
import { pinning } from '../pinning.ts';
import { loadSupply, takeRefusalBack } from '../store.ts';

export const pinReservation = command({
  name: 'pinReservation',
  input: promises.pinReservation,
  roles: GROWERS,
  run: async (context, { lineId, supplyId, units, acceptedShortages }) => {
    await requireOpenLine(context, lineId);
    const supply = await loadSupply(context, supplyId);
    await takeRefusalBack(context, lineId, supplyId);
    const scope = await loadScope(context, {
      lines: [lineId],
      [supply.kind === 'lot' ? 'lots' : 'batches']: [supplyId],
    });
    const { pin, floating, others } = pinning(scope, lineId, supply, units);
    const then = outlook(scope, { reservations: [...others, ...floating, pin] }, planFirst);
    requireAccepted(then, acceptedShortages);
    await saveReservations(context, floating, [pin]);
    context.touched.line(lineId);
    context.touched.features.add('promises');
    return { lineId, supplyId, units };
  },
});
