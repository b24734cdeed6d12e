import { grouped, type Grouped } from './grouped.ts';
import { membersByRank, type Pair, type Transport } from './transport.ts';

/**
 * A filling in which each rank has the most units that it can when no unit of a lower rank is given up for any number of later ones. Demands are
 * served by rank along augmenting paths: what an earlier demand holds may come from elsewhere afterwards, and never becomes less, so that the
 * greedy order is exact (the fills that can be reached together form a polymatroid). One demand may be left for later.
 */
export function filledByRank(transport: Transport, later?: number): Filling {
  const { wanted, rankAt } = transport;
  const filling = new Filling(transport);
  for (const members of membersByRank(rankAt)) {
    const filled = members.filter((demand) => demand !== later);
    const kept = filled.map((demand) => filling.keep(demand, wanted[demand] as number));
    for (const [at, demand] of filled.entries())
      filling.fill(demand, (wanted[demand] as number) - (kept[at] as number));
  }
  return filling;
}

/** That a search began at a supply. */
const START = -1;

/**
 * A filling of demands that grows one demand at a time and takes nothing back. A demand keeps what it holds and looks at its cheapest pairs first,
 * so that the filling comes near to the cheapest one, which then is soon found from it.
 */
export class Filling {
  /** Units of each pair. */
  readonly flow: Float64Array;
  readonly #supplyOf: Int32Array;
  readonly #demandOf: Int32Array;
  readonly #pairsOfDemand: Grouped;
  readonly #pairsOfSupply: Grouped;
  readonly #held: Float64Array;
  readonly #free: Float64Array;
  /** Supplies from which no free unit can be reached any more, nor ever will be. */
  readonly #spent: Uint8Array;
  readonly #seenSupply: Int32Array;
  readonly #seenDemand: Int32Array;
  /** By supply that a search reached, the pair by which a demand would take from it, `START` for a start. */
  readonly #takes: Int32Array;
  /** By demand that a search reached, the pair that it would give up. */
  readonly #gives: Int32Array;
  readonly #reached: Int32Array;
  #count = 0;
  #search = 0;

  constructor({ demands, supplies, pairs, units }: Transport) {
    this.#supplyOf = Int32Array.from(pairs, ({ supply }) => supply);
    this.#demandOf = Int32Array.from(pairs, ({ demand }) => demand);
    this.#pairsOfSupply = grouped(this.#supplyOf, supplies.length);
    this.#pairsOfDemand = grouped(this.#demandOf, demands.length);
    const { begin, members } = this.#pairsOfDemand;
    const cheapestFirst = (a: number, b: number) => compareCosts(pairs[a] as Pair, pairs[b] as Pair) || a - b;
    for (let demand = 0; demand < demands.length; demand++)
      members.subarray(begin[demand], begin[demand + 1]).sort(cheapestFirst);
    this.#held = Float64Array.from(pairs, ({ held }) => held);
    this.flow = new Float64Array(pairs.length);
    this.#free = Float64Array.from(units);
    this.#spent = new Uint8Array(supplies.length);
    this.#seenSupply = new Int32Array(supplies.length);
    this.#seenDemand = new Int32Array(demands.length);
    this.#takes = new Int32Array(supplies.length);
    this.#gives = new Int32Array(demands.length);
    this.#reached = new Int32Array(supplies.length);
  }

  /** Leaves a demand what it holds now as far as that is free, up to so many units, and answers how many. */
  keep(demand: number, most: number): number {
    const { begin, members } = this.#pairsOfDemand;
    let kept = 0;
    for (let at = begin[demand] as number; at < (begin[demand + 1] as number); at++) {
      const pair = members[at] as number;
      const supply = this.#supplyOf[pair] as number;
      const units = Math.min(this.#held[pair] as number, this.#free[supply] as number, most - kept);
      this.#free[supply] = (this.#free[supply] as number) - units;
      this.flow[pair] = (this.flow[pair] as number) + units;
      kept += units;
    }
    return kept;
  }

  /** Gives a demand up to so many units more. */
  fill(demand: number, most: number): void {
    this.#grow(demand, [], most);
  }

  /** Finds all supplies from which no free unit can be reached, so that no search looks at them any more. */
  closeSpent(): void {
    const { begin, members } = this.#pairsOfSupply;
    this.#search += 1;
    this.#count = 0;
    for (const [supply, units] of this.#free.entries()) if (units > 0) this.#reach(supply, START);
    for (let next = 0; next < this.#count; next++) {
      const supply = this.#reached[next] as number;
      for (let at = begin[supply] as number; at < (begin[supply + 1] as number); at++) {
        const taking = this.#demandOf[members[at] as number] as number;
        if (this.#seenDemand[taking] !== this.#search) this.#reachFrom(taking, true);
      }
    }
    for (const [supply, seen] of this.#seenSupply.entries()) if (seen !== this.#search) this.#spent[supply] = 1;
  }

  /**
   * The most units, up to a number, that one line more could have of some supplies while all others keep as many as they have. Leaves everything
   * as it is.
   */
  spare(supplies: readonly number[], most: number): number {
    let free = 0;
    for (const supply of supplies) free += this.#free[supply] as number;
    if (free >= most) return most;
    const before = { free: this.#free.slice(), flow: this.flow.slice(), spent: this.#spent.slice() };
    const got = this.#grow(-1, supplies, most);
    this.#free.set(before.free);
    this.flow.set(before.flow);
    this.#spent.set(before.spent);
    return got;
  }

  #grow(demand: number, starts: readonly number[], most: number): number {
    let got = 0;
    while (got < most) {
      const units = this.#augment(demand, starts, most - got);
      if (units === 0) break;
      got += units;
    }
    return got;
  }

  /**
   * Looks for a free unit breadth first, from the supplies of a demand or from those that are given, and moves as many units as the way to it
   * carries. Answers how many.
   */
  #augment(demand: number, starts: readonly number[], most: number): number {
    const { begin, members } = this.#pairsOfSupply;
    this.#search += 1;
    this.#count = 0;
    for (const supply of starts) this.#reach(supply, START);
    if (demand >= 0) this.#reachFrom(demand);
    for (let next = 0; next < this.#count; next++) {
      const supply = this.#reached[next] as number;
      if ((this.#free[supply] as number) > 0) return this.#move(supply, demand, most);
      for (let at = begin[supply] as number; at < (begin[supply + 1] as number); at++) {
        const pair = members[at] as number;
        const holder = this.#demandOf[pair] as number;
        if (this.flow[pair] === 0 || this.#seenDemand[holder] === this.#search) continue;
        this.#gives[holder] = pair;
        this.#reachFrom(holder);
      }
    }
    // All that was reached is given out among demands that reach nothing else, and stays so.
    for (let at = 0; at < this.#count; at++) this.#spent[this.#reached[at] as number] = 1;
    return 0;
  }

  /** Reaches the supplies of a demand, or only those of which it has something. */
  #reachFrom(demand: number, onlyHeld = false): void {
    const { begin, members } = this.#pairsOfDemand;
    this.#seenDemand[demand] = this.#search;
    for (let at = begin[demand] as number; at < (begin[demand + 1] as number); at++) {
      const pair = members[at] as number;
      if (!onlyHeld || this.flow[pair] !== 0) this.#reach(this.#supplyOf[pair] as number, pair);
    }
  }

  #reach(supply: number, by: number): void {
    if (this.#seenSupply[supply] === this.#search || this.#spent[supply] === 1) return;
    this.#seenSupply[supply] = this.#search;
    this.#takes[supply] = by;
    this.#reached[this.#count++] = supply;
  }

  /** Moves units along the way by which the last supply was reached, from there back to the demand or the start where it began. */
  #move(last: number, demand: number, most: number): number {
    const taken: number[] = [];
    const given: number[] = [];
    let units = Math.min(most, this.#free[last] as number);
    for (let take = this.#takes[last] as number; take !== START;) {
      taken.push(take);
      const taking = this.#demandOf[take] as number;
      if (taking === demand) break;
      const give = this.#gives[taking] as number;
      given.push(give);
      units = Math.min(units, this.flow[give] as number);
      take = this.#takes[this.#supplyOf[give] as number] as number;
    }
    this.#free[last] = (this.#free[last] as number) - units;
    for (const pair of taken) this.flow[pair] = (this.flow[pair] as number) + units;
    for (const pair of given) this.flow[pair] = (this.flow[pair] as number) - units;
    return units;
  }
}

/** By the goals of `allocate` that count for a unit of a pair alone. */
const compareCosts = (a: Pair, b: Pair) =>
  a.penalty - b.penalty || b.savedValue - a.savedValue || a.days - b.days || b.held - a.held;
