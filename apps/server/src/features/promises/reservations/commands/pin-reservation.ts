import { promises } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { judge } from '../../planning/judging.ts';
import { loadScope } from '../../planning/load.ts';
import { outlook, requireAccepted } from '../../planning/outlook.ts';
import { openUnits, type ScopeReservation } from '../../planning/scope.ts';
import { saveReservations } from '../../planning/store.ts';
import { requireOpenLine } from '../open-line.ts';
import { loadSupply, takeRefusalBack } from '../store.ts';

const sum = (rows: readonly ScopeReservation[]) => rows.reduce((units, row) => units + row.units, 0);

export const pinReservation = command({
  name: 'pinReservation',
  input: promises.pinReservation,
  roles: GROWERS,
  run: async (context, { lineId, supplyId, units, acceptedShortages }) => {
    await requireOpenLine(context, lineId);
    const { code, kind } = await loadSupply(context, supplyId);
    await takeRefusalBack(context, lineId, supplyId);
    const scope = await loadScope(context, { lines: [lineId], [kind === 'lot' ? 'lots' : 'batches']: [supplyId] });
    const line = found(scope.lines.find(({ id }) => id === lineId), 'line', 'lineId');
    const supply = scope.supplies.find(({ id }) => id === supplyId);
    const judgement = supply ? judge(supply, line, scope) : null;
    if (!supply || !judgement || judgement.penalty === null) refuse('does-not-serve', { supply: code, reasons: ['not-accepted'] }, 'supplyId');
    if (!judgement.serves) refuse('does-not-serve', { supply: code, reasons: judgement.reasons }, 'supplyId');

    const isPair = (row: ScopeReservation) => row.lineId === lineId && row.supplyId === supplyId;
    const pinned = scope.reservations.filter((row) => row.pinned && !isPair(row));
    const open = openUnits(line) - sum(pinned.filter((row) => row.lineId === lineId));
    if (units > open) refuse('more-than-line-needs', { wanted: units, open }, 'units');
    const available = supply.units - sum(pinned.filter((row) => row.supplyId === supplyId));
    if (units > available) refuse('pinned-by-others', { supply: code, wanted: units, available }, 'units');

    const pin: ScopeReservation = { lineId, supplyId, supplyKind: kind, units, pinned: true };
    const others = scope.reservations.filter((row) => !(isPair(row) && row.pinned));
    requireAccepted(outlook(scope, { reservations: [...others, pin] }), acceptedShortages);
    await saveReservations(context, scope.reservations.filter((row) => isPair(row) && !row.pinned), [pin]);
    context.touched.line(lineId);
    context.touched.features.add('promises');
    return { lineId, supplyId, units };
  },
});
