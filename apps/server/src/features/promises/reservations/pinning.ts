import { found, refuse } from '../../../refusal.ts';
import { requireWholeTrays } from '../../orders/lines/whole-trays.ts';
import { judge } from '../allocation/judging.ts';
import { openUnits, type Scope, type ScopeReservation } from '../allocation/scope.ts';
import type { SupplyFacts } from './store.ts';

const sum = (rows: readonly ScopeReservation[]) => rows.reduce((units, row) => units + row.units, 0);

export interface Pinning {
  pin: ScopeReservation;
  /** What floats between the same line and supply, which the pin takes in. */
  floating: ScopeReservation[];
  /** Everything else that is reserved. */
  others: ScopeReservation[];
}

/** So many units of a lot or batch tied to a line, or a refusal that says why they cannot be. */
export function pinning(
  scope: Scope,
  lineId: string,
  { id: supplyId, code, kind }: SupplyFacts,
  units: number,
): Pinning {
  const line = found(
    scope.lines.find(({ id }) => id === lineId),
    'line',
    'lineId',
  );
  const supply = scope.supplies.find(({ id }) => id === supplyId);
  const judgement = supply ? judge(supply, line, scope) : null;
  if (!supply || !judgement || judgement.penalty === null)
    refuse('does-not-serve', { supply: code, reasons: ['not-accepted'] }, 'supplyId');
  if (!judgement.serves) refuse('does-not-serve', { supply: code, reasons: judgement.reasons }, 'supplyId');

  requireWholeTrays(units, supply.cells, 'units');

  const isPair = (row: ScopeReservation) => row.lineId === lineId && row.supplyId === supplyId;
  const pinned = scope.reservations.filter((row) => row.pinned && !isPair(row));
  const open = openUnits(line) - sum(pinned.filter((row) => row.lineId === lineId));
  if (units > open) refuse('more-than-line-needs', { wanted: units, open }, 'units');
  const available = supply.units - sum(pinned.filter((row) => row.supplyId === supplyId));
  if (units > available) refuse('pinned-by-others', { supply: code, wanted: units, available }, 'units');

  return {
    pin: { lineId, supplyId, supplyKind: kind, units, pinned: true },
    floating: scope.reservations.filter((row) => isPair(row) && !row.pinned),
    others: scope.reservations.filter((row) => !isPair(row)),
  };
}
