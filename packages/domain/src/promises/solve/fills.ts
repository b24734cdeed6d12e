import type { Transport } from './transport.ts';

/**
 * The most units that each rank can have when no unit of a lower rank is given up for any number of later ones, by place of rank. Demands are
 * served by rank along augmenting paths: what an earlier demand holds may come from elsewhere afterwards, and never becomes less, so that the
 * greedy order is exact (the fills that can be reached together form a polymatroid).
 */
export function mostFills(transport: Transport): number[] {
  const { demands, wanted, rankAt } = transport;
  const fills: number[] = Array.from({ length: 1 + Math.max(-1, ...rankAt) }, () => 0);
  const filling = new Filling(transport);
  const byRank = [...demands.keys()].sort((a, b) => (rankAt[a] as number) - (rankAt[b] as number) || a - b);
  for (const demand of byRank) fills[rankAt[demand] as number] = (fills[rankAt[demand] as number] as number) + filling.fill(demand, wanted[demand] as number);
  return fills;
}

/** A filling of demands that grows one demand at a time and takes nothing back. */
export class Filling {
  readonly #pairsOfDemand: number[][];
  readonly #pairsOfSupply: number[][];
  readonly #free: number[];
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
    let got = 0;
    while (got < most) {
      const units = this.#augment(demand, most - got);
      if (units === 0) break;
      got += units;
    }
    return got;
  }

  /** Looks for a free unit breadth first, and moves as many units as the way to it carries. */
  #augment(start: number, most: number): number {
    const { pairs, supplies } = this.transport;
    const search = ++this.#search;
    const queue = [start];
    const reached: number[] = [];
    // By supply, the pair by which a demand would take from it; by demand, the pair that it would give up.
    const takes = new Map<number, number>();
    const gives = new Map<number, number>();
    this.#seen[supplies.length + start] = search;
    for (let at = 0; at < queue.length; at++) {
      for (const pair of this.#pairsOfDemand[queue[at] as number] as number[]) {
        const supply = (pairs[pair] as { supply: number }).supply;
        if (this.#seen[supply] === search || this.#spent[supply] === 1) continue;
        this.#seen[supply] = search;
        takes.set(supply, pair);
        if ((this.#free[supply] as number) > 0) return this.#move(supply, start, most, takes, gives);
        reached.push(supply);
        for (const other of this.#pairsOfSupply[supply] as number[]) {
          const holder = (pairs[other] as { demand: number }).demand;
          if ((this.#flow[other] as number) === 0 || this.#seen[supplies.length + holder] === search) continue;
          this.#seen[supplies.length + holder] = search;
          gives.set(holder, other);
          queue.push(holder);
        }
      }
    }
    // All that was reached is given out among demands that reach nothing else.
    for (const supply of reached) this.#spent[supply] = 1;
    return 0;
  }

  #move(last: number, start: number, most: number, takes: ReadonlyMap<number, number>, gives: ReadonlyMap<number, number>): number {
    const { pairs } = this.transport;
    const taken: number[] = [];
    const given: number[] = [];
    for (let supply = last; ;) {
      const take = takes.get(supply) as number;
      taken.push(take);
      const { demand } = pairs[take] as { demand: number };
      if (demand === start) break;
      const give = gives.get(demand) as number;
      given.push(give);
      supply = (pairs[give] as { supply: number }).supply;
    }
    const units = Math.min(most, this.#free[last] as number, ...given.map((pair) => this.#flow[pair] as number));
    this.#free[last] = (this.#free[last] as number) - units;
    for (const pair of taken) this.#flow[pair] = (this.#flow[pair] as number) + units;
    for (const pair of given) this.#flow[pair] = (this.#flow[pair] as number) - units;
    return units;
  }
}
