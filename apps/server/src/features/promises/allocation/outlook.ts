import type { promises } from '@rootclock/contracts';
import { refuse } from '../../../refusal.ts';
import type { Scope, ScopeLine, ScopeReservation } from './scope.ts';

/** What a change would do to lines: their day, rank, units, conditions, or what is pinned to them. */
export interface ScopeChange {
  lines?: ReadonlyMap<string, Partial<ScopeLine>>;
  reservations?: ScopeReservation[];
}

/** The scope as it would be after a change. */
export const changed = (scope: Scope, { lines, reservations }: ScopeChange): Scope => ({
  ...scope,
  lines: scope.lines.map((line) => ({ ...line, ...lines?.get(line.id) })),
  reservations: reservations ?? scope.reservations,
});

/** Makes the plan of a scope: at once, or for a command as far as that takes no time under its lock. */
type Plan = (scope: Scope) => ScopeReservation[];

/** How every line of a scope fares now and would fare after a change. */
export function outlook(scope: Scope, change: ScopeChange, plan: Plan): promises.LineChange[] {
  const then = changed(scope, change);
  const reservedNow = reservedBy(scope.reservations);
  const reservedThen = reservedBy(plan(then));
  return then.lines.map((line) => {
    const done = line.stagedUnits + line.deliveredUnits;
    const filledNow = done + (reservedNow.get(line.id) ?? 0);
    const filledThen = done + (reservedThen.get(line.id) ?? 0);
    return {
      lineId: line.id,
      orderId: line.orderId,
      orderCode: line.orderCode,
      clientName: line.clientName,
      dueOn: line.dueOn,
      scientificName: line.scientificName,
      containerCode: line.containerCode,
      units: line.units,
      filledNow,
      filledThen,
      // Wanting fewer is no shortening.
      shorterBy: Math.max(0, Math.min(filledNow, line.units) - filledThen),
    };
  });
}

function reservedBy(rows: readonly ScopeReservation[]): Map<string, number> {
  const units = new Map<string, number>();
  for (const row of rows) units.set(row.lineId, (units.get(row.lineId) ?? 0) + row.units);
  return units;
}

/** Passes when nothing becomes shorter, or only what was accepted and by no more units; else refuses with every line that would. */
export function requireAccepted(
  lines: readonly promises.LineChange[],
  accepted: readonly { lineId: string; units: number }[],
): void {
  const shorter = lines.filter((line) => line.shorterBy > 0);
  const worse = shorter.some(
    (line) => line.shorterBy > (accepted.find((row) => row.lineId === line.lineId)?.units ?? 0),
  );
  if (worse) {
    refuse('would-shorten', {
      lines: shorter.map(
        ({
          lineId,
          orderId,
          orderCode,
          clientName,
          scientificName,
          containerCode,
          filledNow,
          filledThen,
          shorterBy,
        }) => ({
          lineId,
          orderId,
          orderCode,
          clientName,
          scientificName,
          containerCode,
          filledNow,
          filledThen,
          shorterBy,
        }),
      ),
    });
  }
}

export interface Turn {
  keepsRank: boolean;
  lines: promises.LineChange[];
  /** The new ranks of the lines that change, when they go behind all others. */
  ranks: { lineId: string; rank: number }[];
}

export const shortensOthers = (lines: readonly promises.LineChange[], own: ReadonlyMap<string, unknown>) =>
  lines.some((line) => line.shorterBy > 0 && !own.has(line.lineId));

/** What a change of lines does when they keep their rank only where that leaves no other line shorter, and else go behind all others from `first` on. */
export function turnOf(
  scope: Scope,
  changes: ReadonlyMap<string, Partial<ScopeLine>>,
  first: number,
  plan: Plan,
): Turn {
  const kept = outlook(scope, { lines: changes }, plan);
  if (!shortensOthers(kept, changes)) return { keepsRank: true, lines: kept, ranks: [] };
  const ranks = scope.lines.filter(({ id }) => changes.has(id)).map(({ id }, at) => ({ lineId: id, rank: first + at }));
  const last = new Map(ranks.map(({ lineId, rank }) => [lineId, { ...changes.get(lineId), rank }]));
  return { keepsRank: false, lines: outlook(scope, { lines: last }, plan), ranks };
}
