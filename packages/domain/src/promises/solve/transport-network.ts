import type { Network } from './cheapest-flow.ts';
import type { Pair, Transport } from './transport.ts';

/** Arcs that are added one by one, with what a unit costs by goal. */
class ArcList {
  count = 0;
  readonly #from: Int32Array;
  readonly #to: Int32Array;
  readonly #capacity: Float64Array;
  readonly #penalty: Float64Array;
  readonly #lostValue: Float64Array;
  readonly #days: Float64Array;
  readonly #moved: Float64Array;

  constructor(
    most: number,
    private readonly mostValue: number,
  ) {
    this.#from = new Int32Array(most);
    this.#to = new Int32Array(most);
    this.#capacity = new Float64Array(most);
    this.#penalty = new Float64Array(most);
    this.#lostValue = new Float64Array(most);
    this.#days = new Float64Array(most);
    this.#moved = new Float64Array(most);
  }

  add(from: number, to: number, capacity: number): void {
    const arc = this.count++;
    this.#from[arc] = from;
    this.#to[arc] = to;
    this.#capacity[arc] = capacity;
  }

  addPair(from: number, to: number, capacity: number, { penalty, savedValue, days }: Pair, moved: number): void {
    const arc = this.count;
    this.add(from, to, capacity);
    this.#penalty[arc] = penalty;
    this.#lostValue[arc] = this.mostValue - savedValue;
    this.#days[arc] = days;
    this.#moved[arc] = moved;
  }

  network(gives: readonly number[]): Network {
    const goals = [this.#penalty, this.#lostValue, this.#days, this.#moved].map((goal) => goal.subarray(0, this.count));
    return {
      gives,
      from: this.#from.subarray(0, this.count),
      to: this.#to.subarray(0, this.count),
      capacity: this.#capacity.subarray(0, this.count),
      goals,
    };
  }
}

/**
 * Supplies give all their units: to demands, or to one node where what nobody gets is left. A demand that is alone in its rank gets the rank's
 * fill; demands of equal rank pass it on to a node of their rank, so that they share it as the later goals have it. The first arcs are those of
 * the pairs, in their order; `pairOf` tells whose each is.
 */
export function networkOf(
  { supplies, demands, units, wanted, rankAt, pairs }: Transport,
  fills: ReadonlyMap<number, number>,
): { network: Network; pairOf: Int32Array } {
  const leftAt = supplies.length + demands.length;
  const gives = [...units, ...demands.map(() => 0), 0];
  const sharing = new Map<number, number[]>();
  for (const [demand, rank] of rankAt.entries()) {
    const members = sharing.get(rank);
    if (members) members.push(demand);
    else sharing.set(rank, [demand]);
  }

  const arcs = new ArcList(
    2 * pairs.length + supplies.length + demands.length,
    pairs.reduce((most, { savedValue }) => Math.max(most, savedValue), 0),
  );
  const pairOf = new Int32Array(2 * pairs.length);
  for (let at = 0; at < pairs.length; at++) {
    const pair = pairs[at] as Pair;
    const to = supplies.length + pair.demand;
    const most = Math.min(units[pair.supply] as number, wanted[pair.demand] as number);
    const kept = Math.min(pair.held, most);
    // What the demand holds already is no move; what is more than that is, for as much as the total of all fills is fixed.
    if (kept > 0) {
      pairOf[arcs.count] = at;
      arcs.addPair(pair.supply, to, kept, pair, 0);
    }
    if (most > kept) {
      pairOf[arcs.count] = at;
      arcs.addPair(pair.supply, to, most - kept, pair, 1);
    }
  }
  const ofPairs = pairOf.subarray(0, arcs.count);
  let all = 0;
  for (const [supply, most] of units.entries()) {
    arcs.add(supply, leftAt, most);
    all += most;
  }
  let filled = 0;
  for (const [rank, members] of sharing) {
    const fill = fills.get(rank) ?? 0;
    filled += fill;
    if (members.length === 1) {
      gives[supplies.length + (members[0] as number)] = -fill;
      continue;
    }
    const shared = gives.push(-fill) - 1;
    for (const demand of members) arcs.add(supplies.length + demand, shared, wanted[demand] as number);
  }
  gives[leftAt] = filled - all;
  return { network: arcs.network(gives), pairOf: ofPairs };
}
