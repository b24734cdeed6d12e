import type { Pair, Transport } from './transport.ts';

export interface Part extends Transport {
  /** Of each pair, its number in the whole. */
  pairAt: readonly number[];
}

/**
 * Splits a transport into parts that share no supply and no demand; each can be solved by itself. Supplies and demands without any pair are left
 * out.
 */
export function componentsOf(transport: Transport): Part[] {
  const { supplies, demands, units, wanted, rankAt, pairs } = transport;
  const roots = Int32Array.from({ length: supplies.length + demands.length }, (_, node) => node);
  const rootOf = (node: number): number => {
    let root = node;
    while ((roots[root] as number) !== root) root = roots[root] as number;
    for (let each = node; each !== root;) {
      const next = roots[each] as number;
      roots[each] = root;
      each = next;
    }
    return root;
  };
  for (const { supply, demand } of pairs) roots[rootOf(supply)] = rootOf(supplies.length + demand);

  const parts = new Map<number, number[]>();
  for (const [at, { supply }] of pairs.entries()) {
    const root = rootOf(supply);
    const part = parts.get(root);
    if (part) part.push(at);
    else parts.set(root, [at]);
  }
  const place = new Int32Array(supplies.length + demands.length);
  return [...parts.values()].map((pairAt): Part => {
    const part = pick(pairs, pairAt);
    const supplyAt = numbered(part, 'supply', place, 0);
    const demandAt = numbered(part, 'demand', place, supplies.length);
    return {
      supplies: pick(supplies, supplyAt),
      demands: pick(demands, demandAt),
      units: pick(units, supplyAt),
      wanted: pick(wanted, demandAt),
      rankAt: pick(rankAt, demandAt),
      pairs: part.map(({ supply, demand, penalty, held, savedValue, days }) => ({
        supply: place[supply] as number,
        demand: place[supplies.length + demand] as number,
        penalty,
        held,
        savedValue,
        days,
      })),
      pairAt,
    };
  });
}

const pick = <T>(rows: readonly T[], at: readonly number[]): T[] => at.map((each) => rows[each] as T);

/** The supplies or demands of a part in ascending order; writes the new number of each into `place`. */
function numbered(part: readonly Pair[], side: 'supply' | 'demand', place: Int32Array, offset: number): number[] {
  const found = [...new Set(part.map((pair) => pair[side]))].sort((a, b) => a - b);
  for (const [to, from] of found.entries()) place[offset + from] = to;
  return found;
}
