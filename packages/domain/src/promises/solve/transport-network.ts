import type { Network } from './network.ts';
import { membersByRank, type Pair, type Transport } from './transport.ts';

/** Arcs that are added one by one, with what a unit costs by goal. */
class ArcList {
  count = 0;
  readonly #from: Int32Array;
  readonly #to: Int32Array;
  readonly #capacity: Float64Array;
  readonly #flow: Float64Array;
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
    this.#flow = new Float64Array(most);
    this.#penalty = new Float64Array(most);
    this.#lostValue = new Float64Array(most);
    this.#days = new Float64Array(most);
    this.#moved = new Float64Array(most);
  }

  add(from: number, to: number, flow: number, capacity: number): void {
    const arc = this.count++;
    this.#from[arc] = from;
    this.#to[arc] = to;
    this.#capacity[arc] = capacity;
    this.#flow[arc] = flow;
  }

  addPair(
    from: number,
    to: number,
    flow: number,
    capacity: number,
    { penalty, savedValue, days }: Pair,
    moved: number,
  ): void {
    const arc = this.count;
    this.add(from, to, flow, capacity);
    this.#penalty[arc] = penalty;
    this.#lostValue[arc] = this.mostValue - savedValue;
    this.#days[arc] = days;
    this.#moved[arc] = moved;
  }

  flow(): Float64Array {
    return this.#flow.subarray(0, this.count);
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

export interface TransportNetwork {
  network: Network;
  /** The filling as a flow of this network, which gives and gets everything. */
  flow: Float64Array;
  /** Whose each of the first arcs is. */
  pairOf: Int32Array;
}

/**
 * Supplies give all their units: to demands, or to one node where what nobody gets is left. A demand that is alone in its rank gets the rank's
 * fill; demands of equal rank pass it on to a node of their rank, so that they share it as the later goals have it. The first arcs are those of
 * the pairs, in their order. The fills are those of a filling, whose units of each pair are given.
 */
export function networkOf(
  { supplies, demands, units, wanted, rankAt, pairs }: Transport,
  filling: Float64Array,
): TransportNetwork {
  const leftAt = supplies.length + demands.length;
  const left = Float64Array.from(units);
  const filled = new Float64Array(demands.length);
  const arcs = new ArcList(
    2 * pairs.length + supplies.length + demands.length,
    pairs.reduce((most, { savedValue }) => Math.max(most, savedValue), 0),
  );
  const pairOf = new Int32Array(2 * pairs.length);
  for (let at = 0; at < pairs.length; at++) {
    const pair = pairs[at] as Pair;
    const { supply, demand } = pair;
    const flow = filling[at] as number;
    left[supply] = (left[supply] as number) - flow;
    filled[demand] = (filled[demand] as number) + flow;
    const to = supplies.length + demand;
    const most = Math.min(units[supply] as number, wanted[demand] as number);
    const kept = Math.min(pair.held, most);
    // What the demand holds already is no move; what is more than that is, for as much as the total of all fills is fixed.
    if (kept > 0) {
      pairOf[arcs.count] = at;
      arcs.addPair(supply, to, Math.min(flow, kept), kept, pair, 0);
    }
    if (most > kept) {
      pairOf[arcs.count] = at;
      arcs.addPair(supply, to, Math.max(0, flow - kept), Infinity, pair, 1);
    }
  }
  const ofPairs = pairOf.subarray(0, arcs.count);
  for (let supply = 0; supply < supplies.length; supply++) arcs.add(supply, leftAt, left[supply] as number, Infinity);

  const gives = [...units, ...demands.map(() => 0), 0 - sum(left)];
  for (const members of membersByRank(rankAt)) {
    const fill = sum(members.map((demand) => filled[demand] as number));
    const [only] = members;
    if (only !== undefined && members.length === 1) {
      gives[supplies.length + only] = -fill;
      continue;
    }
    const shared = gives.push(-fill) - 1;
    for (const demand of members)
      arcs.add(supplies.length + demand, shared, filled[demand] as number, wanted[demand] as number);
  }
  return { network: arcs.network(gives), flow: arcs.flow(), pairOf: ofPairs };
}

const sum = (numbers: readonly number[] | Float64Array): number => {
  let total = 0;
  for (const number of numbers) total += number;
  return total;
};
