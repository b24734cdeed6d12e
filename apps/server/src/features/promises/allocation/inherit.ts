import { inWholeTrays } from '@rootclock/domain';
import { type Judged, mayHold } from './judging.ts';
import type { Scope, ScopeReservation } from './scope.ts';

/**
 * Potting, splitting, merging and taking any of them back carry reservations to where the plants went: what no longer fits the lot or batch it was
 * held by goes to what took its plants in the same command, pinned units first, the earlier rank first, as far as the line may hold it there. Where the
 * line holds some of it already, the two add up.
 */
export function inherit(scope: Scope, judged: Judged): ScopeReservation[] {
  if (scope.heirs.length === 0) return scope.reservations;
  const rows = scope.reservations.map((row) => ({ ...row }));
  const rank = new Map(scope.lines.map((line) => [line.id, line.rank]));
  const there = new Map(scope.supplies.map((supply) => [supply.id, supply]));
  const wholeOf = (supplyId: string) =>
    inWholeTrays(there.get(supplyId)?.units ?? 0, there.get(supplyId)?.cells ?? null);
  const heldOf = (supplyId: string) =>
    rows.filter((row) => row.supplyId === supplyId).reduce((sum, row) => sum + row.units, 0);
  for (const { fromId, toId } of scope.heirs) {
    const supplyKind = there.get(toId)?.kind;
    if (!supplyKind) continue;
    let excess = heldOf(fromId) - wholeOf(fromId);
    let room = wholeOf(toId) - heldOf(toId);
    const leaving = rows
      .filter((row) => row.supplyId === fromId)
      .sort((a, b) => Number(b.pinned) - Number(a.pinned) || (rank.get(a.lineId) ?? 0) - (rank.get(b.lineId) ?? 0));
    for (const row of leaving) {
      const units = Math.min(excess, room, row.units);
      const judgement = judged.get(row.lineId)?.get(toId);
      if (units <= 0 || !judgement || !(row.pinned ? mayHold(judgement) : judgement.serves)) continue;
      row.units -= units;
      excess -= units;
      room -= units;
      const same = rows.find(
        ({ lineId, supplyId, pinned }) => lineId === row.lineId && supplyId === toId && pinned === row.pinned,
      );
      if (same) same.units += units;
      else rows.push({ lineId: row.lineId, supplyId: toId, supplyKind, units, pinned: row.pinned });
    }
  }
  return rows.filter((row) => row.units > 0);
}
