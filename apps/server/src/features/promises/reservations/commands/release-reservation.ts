import { promises } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadReservations, saveReservations } from '../../allocation/store.ts';
import { requireOpenLine } from '../open-line.ts';
import { loadSupply, refuseSupply } from '../store.ts';

/** Given up by a person, so it does not come back by itself: the next plan would else take the same plants again. */
export const releaseReservation = command({
  name: 'releaseReservation',
  input: promises.releaseReservation,
  roles: GROWERS,
  run: async (context, { lineId, supplyId }) => {
    await requireOpenLine(context, lineId);
    const { code } = await loadSupply(context, supplyId);
    const rows = (await loadReservations(context, [lineId], [])).filter((row) => row.supplyId === supplyId);
    if (rows.length === 0) refuse('nothing-reserved', { supply: code }, 'supplyId');
    await saveReservations(context, rows, []);
    await refuseSupply(context, lineId, supplyId);
    context.touched.line(lineId);
    context.touched.features.add('promises');
    return { lineId, supplyId, units: rows.reduce((sum, row) => sum + row.units, 0) };
  },
});
