import { changed, turnOf } from '../allocation/outlook.ts';
import { planReservations } from '../allocation/plan.ts';
import type { Scope } from '../allocation/scope.ts';
import type { Trial, TurnTrial } from './trial.ts';

/** Lines that change and keep their turn where that leaves nobody else shorter, or where it is wished; else they go behind all others. */
export function inTurn({ before, changes, keepRank }: TurnTrial): Trial {
  const { keepsRank, ranks } = keepRank
    ? { keepsRank: true, ranks: [] }
    : turnOf(before, changes, nextRank(before), planReservations);
  const lines = new Map([
    ...changes,
    ...ranks.map(({ lineId, rank }) => [lineId, { ...changes.get(lineId), rank }] as const),
  ]);
  return { before, after: changed(before, { lines }), own: new Set(changes.keys()), keepsRank };
}

const nextRank = (scope: Scope) => 1 + Math.max(0, ...scope.lines.map(({ rank }) => rank));
