// The answer to a tiny instance by looking through all there are.
import type { AllocationInstance, Assignment } from '@rootclock/domain';
import { byPair, type Goals, goalsOf, isServing, pairKey } from './goals.ts';

/** Goals as one list of numbers, of which the lowest in the order of its places is the best. */
const ordered = ({ filled, penalty, savedValue, days, moved }: Goals): number[] => [
  ...filled.map((units) => -units),
  penalty,
  -savedValue,
  days,
  moved,
];

function isBefore(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((number, place) => number !== b[place]);
  return at >= 0 && (a[at] ?? 0) < (b[at] ?? 0);
}

/** Of all whole answers that keep the pins, the best by the goals; of those the one with most on the first pair in order of ids, then on the second, and so on. */
export function firstAnswer(instance: AllocationInstance): { assignments: Assignment[]; looked: number } {
  const inOrder = <T extends { id: string }>(rows: readonly T[]) => [...rows].sort((a, b) => (a.id < b.id ? -1 : 1));
  const pins = byPair((instance.current ?? []).filter(({ pinned }) => pinned === true));
  const pairs = inOrder(instance.supply).flatMap((from) =>
    inOrder(instance.demand)
      .filter((to) => isServing(from, to))
      .map((to) => ({ from, to, least: pins.get(pairKey(from.id, to.id)) ?? 0 })),
  );
  const left = new Map([...instance.supply, ...instance.demand].map(({ id, units }) => [id, units]));
  const taking = (ids: readonly string[], units: number) =>
    ids.forEach((id) => left.set(id, (left.get(id) ?? 0) - units));
  const units: number[] = pairs.map(({ least }) => least);
  for (const { from, to, least } of pairs) taking([from.id, to.id], least);
  let best: { assignments: Assignment[]; key: number[] } | undefined;
  let looked = 0;

  const walk = (at: number): void => {
    const pair = pairs[at];
    if (pair === undefined) {
      looked += 1;
      const assignments = pairs
        .map(({ from, to }, place) => ({ supply: from.id, demand: to.id, units: units[place] ?? 0 }))
        .filter((row) => row.units > 0);
      const key = [...ordered(goalsOf(instance, assignments)), ...units.map((most) => -most)];
      if (best === undefined || isBefore(key, best.key)) best = { assignments, key };
      return;
    }
    const ids = [pair.from.id, pair.to.id];
    const most = Math.min(...ids.map((id) => left.get(id) ?? 0));
    for (let more = 0; more <= most; more += 1) {
      units[at] = pair.least + more;
      taking(ids, more);
      walk(at + 1);
      taking(ids, -more);
    }
    units[at] = pair.least;
  };
  walk(0);
  return { assignments: best?.assignments ?? [], looked };
}
