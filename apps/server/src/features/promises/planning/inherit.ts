import type { Judged } from './judging.ts';
import type { Scope, ScopeReservation } from './scope.ts';

/**
 * Potting, splitting and the like carry reservations to the lot that was made: what no longer fits the lot or batch it was held by goes to
 * its heirs of the same command, pinned units first, the earlier rank first, as far as the heir serves the line.
 */
export function inherit(scope: Scope, judged: Judged): ScopeReservation[] {
  if (scope.heirs.length === 0) return scope.reservations;
  const rows = scope.reservations.map((row) => ({ ...row }));
  const rank = new Map(scope.lines.map((line) => [line.id, line.rank]));
  const there = new Map(scope.supplies.map((supply) => [supply.id, supply]));
  const heldOf = (supplyId: string) => rows.filter((row) => row.supplyId === supplyId).reduce((sum, row) => sum + row.units, 0);
  for (const { parentId, childId } of scope.heirs) {
    const child = there.get(childId);
    if (!child) continue;
    let excess = heldOf(parentId) - (there.get(parentId)?.units ?? 0);
    let room = child.units - heldOf(childId);
    const leaving = rows.filter((row) => row.supplyId === parentId)
      .sort((a, b) => Number(b.pinned) - Number(a.pinned) || (rank.get(a.lineId) ?? 0) - (rank.get(b.lineId) ?? 0));
    for (const row of leaving) {
      const units = Math.min(excess, room, row.units);
      if (units <= 0 || !judged.get(row.lineId)?.get(childId)?.serves) continue;
      row.units -= units;
      excess -= units;
      room -= units;
      rows.push({ lineId: row.lineId, supplyId: childId, supplyKind: 'lot', units, pinned: row.pinned });
    }
  }
  return rows.filter((row) => row.units > 0);
}
