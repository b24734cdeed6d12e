import { InputError, requireUnits } from '../kernel/input.ts';

interface Counted {
  units: number;
}

/** Part of what leaves one side and arrives on the other. */
export interface CountPair<From, To> {
  from: From;
  to: To;
  fromUnits: number;
  toUnits: number;
}

/**
 * Pairs counts that leave with counts that arrive, in the order given, so that each side keeps its own sum. With equal sums every
 * pair has equal counts; with different ones (a clump cut in three, three plugs in one pot) each is spread over the other in
 * proportion. Every leaving and every arriving count appears in at least one pair.
 * Counts are whole units from 1 on. Throws InputError for anything else or an empty side.
 */
export function pairCounts<From extends Counted, To extends Counted>(
  leaving: readonly From[],
  arriving: readonly To[],
): CountPair<From, To>[] {
  const gone = sumOf('leaving', leaving);
  const come = sumOf('arriving', arriving);
  // Both sides are laid on one line of gone × come steps: on it every boundary of either side is a whole number.
  const sources = endsOf(leaving, come);
  const targets = endsOf(arriving, gone);
  const pairs: CountPair<From, To>[] = [];
  let at = 0;
  let [source, target] = [sources.shift(), targets.shift()];
  while (source && target) {
    const end = Math.min(source.end, target.end);
    // Rounding the running sums, not the parts, keeps each sum exact.
    const fromUnits = Math.round(end / come) - Math.round(at / come);
    const toUnits = Math.round(end / gone) - Math.round(at / gone);
    if (fromUnits + toUnits > 0) pairs.push({ from: source.item, to: target.item, fromUnits, toUnits });
    at = end;
    const sourceIsDone = source.end === end;
    if (target.end === end) target = targets.shift();
    if (sourceIsDone) source = sources.shift();
  }
  return pairs;
}

function sumOf(side: string, counts: readonly Counted[]): number {
  if (counts.length === 0) throw new InputError(side, 'must hold at least one count');
  return counts.reduce((sum, { units }) => sum + requireUnits(side, units), 0);
}

function endsOf<Item extends Counted>(items: readonly Item[], step: number): { item: Item; end: number }[] {
  let sum = 0;
  return items.map((item) => ({ item, end: (sum += item.units * step) }));
}
