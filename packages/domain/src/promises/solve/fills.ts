import type { Pair, Transport } from './transport.ts';

/**
 * The most units that each rank can have (`fills`, by place of rank) when no unit of a lower rank is given up for any number of later ones, and a
 * filling that has them. Demands are served by rank along augmenting paths: what an earlier demand holds may come from elsewhere afterwards, and
 * never becomes less, so that the greedy order is exact (the fills that can be reached together form a polymatroid).
 */
export function filledByRank(transport: Transport): { fills: Map<number, number>; filling: Filling } {
  const { demands, wanted, rankAt } = transport;
  const fills = new Map<number, number>();
  const filling = new Filling(transport);
  const byRank = [...demands.keys()].sort((a, b) => (rankAt[a] as number) - (rankAt[b] as number) || a - b);
  for (const demand of byRank) {
    const rank = rankAt[demand] as number;
    fills.set(rank, (fills.get(rank) ?? 0) + filling.fill(demand, wanted[demand] as number));
  }
  return { fills, filling };
}

/** A filling of demands that grows one demand at a time and takes nothing back. */
export class Filling {
  readonly #pairsOfDemand: number[][];
  readonly #pairsOfSupply: number[][];
  #free: number[];
  readonly #flow: Float64Array;
  /** Supplies from which no free unit can be reached any more, nor ever will be. */
  readonly #spent: Uint8Array;
  readonly #seen: Int32Array;
  #search = 0;

  constructor(private readonly transport: Transport) {
    const { demands, supplies, pairs, units } = transport;
    this.#pairsOfDemand = demands.map(() => []);
    this.#pairsOfSupply = supplies.map(() => []);
    for (const [at, { supply, demand }] of pairs.entries()) {
      this.#pairsOfDemand[demand]?.push(at);
      this.#pairsOfSupply[supply]?.push(at);
    }
    this.#free = [...units];
    this.#flow = new Float64Array(pairs.length);
    this.#spent = new Uint8Array(supplies.length);
    this.#seen = new Int32Array(supplies.length + demands.length);
  }

  /** Gives a demand up to so many units more and answers how many it got. */
  fill(demand: number, most: number): number {
    const { pairs, supplies } = this.transport;
    const own = new Map((this.#pairsOfDemand[demand] as number[]).map((pair) => [(pairs[pair] as Pair).supply, pair]));
    return this.#grow([...own.keys()], most, supplies.length + demand, (supply, units) => {
      const pair = own.get(supply) as number;
      this.#flow[pair] = (this.#flow[pair] as number) + units;
    });
  }

  /** The most units, up to a number, that one line more could have of some supplies while all others keep as many as they have. Leaves everything as it is. */
  spare(supplies: readonly number[], most: number): number {
    const before = { free: this.#free.slice(), flow: this.#flow.slice(), spent: this.#spent.slice() };
    const got = this.#grow(supplies, most, -1, () => {});
    this.#free = before.free;
    this.#flow.set(before.flow);
    this.#spent.set(before.spent);
    return got;
  }

  #grow(starts: readonly number[], most: number, self: number, give: (supply: number, units: number) => void): number {
    let got = 0;
    while (got < most) {
      const found = this.#augment(starts, most - got, self);
      if (!found) break;
      give(found.supply, found.units);
      got += found.units;
    }
    return got;
  }

  /** Looks for a free unit breadth first, from the supplies that may give, and moves as many units as the way to it carries. Answers which of them gave. */
  #augment(starts: readonly number[], most: number, self: number): { supply: number; units: number } | null {
    const { pairs, supplies } = this.transport;
    const search = ++this.#search;
    if (self >= 0) this.#seen[self] = search;
    const reached: number[] = [];
    // By supply, the pair by which a demand would take from it, none for the start; by demand, the pair that it would give up.
    const takes = new Map<number, number | null>();
    const gives = new Map<number, number>();
    const reach = (supply: number, by: number | null) => {
      if (this.#seen[supply] === search || this.#spent[supply] === 1) return;
      this.#seen[supply] = search;
      takes.set(supply, by);
      reached.push(supply);
    };
    for (const supply of starts) reach(supply, null);
    for (let at = 0; at < reached.length; at++) {
      const supply = reached[at] as number;
      if ((this.#free[supply] as number) > 0) return this.#move(supply, most, takes, gives);
      for (const other of this.#pairsOfSupply[supply] as number[]) {
        const holder = (pairs[other] as Pair).demand;
        if ((this.#flow[other] as number) === 0 || this.#seen[supplies.length + holder] === search) continue;
        this.#seen[supplies.length + holder] = search;
        gives.set(holder, other);
        for (const pair of this.#pairsOfDemand[holder] as number[]) reach((pairs[pair] as Pair).supply, pair);
      }
    }
    // All that was reached is given out among demands that reach nothing else, and stays so.
    for (const supply of reached) this.#spent[supply] = 1;
    return null;
  }

  #move(
    last: number,
    most: number,
    takes: ReadonlyMap<number, number | null>,
    gives: ReadonlyMap<number, number>,
  ): { supply: number; units: number } {
    const { pairs } = this.transport;
    const taken: number[] = [];
    const given: number[] = [];
    let supply = last;
    for (let take = takes.get(supply) ?? null; take !== null; take = takes.get(supply) ?? null) {
      taken.push(take);
      const give = gives.get((pairs[take] as Pair).demand) as number;
      given.push(give);
      supply = (pairs[give] as Pair).supply;
    }
    const units = given.reduce(
      (least, pair) => Math.min(least, this.#flow[pair] as number),
      Math.min(most, this.#free[last] as number),
    );
    this.#free[last] = (this.#free[last] as number) - units;
    for (const pair of taken) this.#flow[pair] = (this.#flow[pair] as number) + units;
    for (const pair of given) this.#flow[pair] = (this.#flow[pair] as number) - units;
    return { supply, units };
  }
}
