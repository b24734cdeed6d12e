import { promises } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadReservations, saveReservations } from '../../allocation/store.ts';
import { requireOpenLine } from '../open-line.ts';
import { loadSupply } from '../store.ts';

export const unpinReservation = command({
  name: 'unpinReservation',
  input: promises.unpinReservation,
  roles: GROWERS,
  run: async (context, { lineId, supplyId }) => {
    await requireOpenLine(context, lineId);
    const { code } = await loadSupply(context, supplyId);
    const rows = (await loadReservations(context, [lineId], [])).filter((row) => row.supplyId === supplyId);
    const pinned = rows.find((row) => row.pinned);
    if (!pinned) refuse('nothing-reserved', { supply: code }, 'supplyId');
    const units = rows.reduce((sum, row) => sum + row.units, 0);
    await saveReservations(
      context,
      rows.filter((row) => row.pinned),
      rows.filter((row) => row.pinned).map((row) => ({ ...row, units, pinned: false })),
    );
    context.touched.line(lineId);
    context.touched.features.add('promises');
    return { lineId, supplyId };
  },
});
