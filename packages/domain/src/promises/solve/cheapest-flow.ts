import { joinGoals } from './goals.ts';
import { SpanningTree } from './spanning-tree.ts';

/** Arcs between nodes; all numbers whole. */
export interface Network {
  /** What each node gives (positive) or gets (negative); in all 0. */
  gives: readonly number[];
  from: Int32Array;
  to: Int32Array;
  capacity: Float64Array;
  /** Costs of a unit by goal, the first goal first, each by arc. */
  goals: readonly Float64Array[];
}

export interface CheapestFlow {
  flow: Float64Array;
  /** By arc, whether its flow may differ in another flow of the same cost. */
  isOpen: Uint8Array;
}

const LOWER = 1;
const IN_TREE = 0;
const UPPER = -1;

/**
 * The flow that gives and gets everything at the least cost, goal by goal. Throws an Error when there is no such flow.
 *
 * Network simplex: a tree of arcs whose potentials price all others, one of which enters and one leaves at each step. The leaving arc is chosen so
 * that the tree stays strongly feasible, with which the method ends (W. H. Cunningham, A network simplex method, Mathematical Programming 11,
 * 1976, 105–116; from memory). Missing flow runs over arcs to an extra root that cost a unit of a goal of their own before all others.
 */
export function cheapestFlow(network: Network): CheapestFlow {
  const simplex = new Simplex(network);
  while (simplex.step());
  return simplex.result();
}

/** Numbers of the network's own arcs, then of the arcs to and from the extra root. */
function withRoot(own: Float64Array, extra: readonly number[]): Float64Array {
  const all = new Float64Array(own.length + extra.length);
  all.set(own);
  all.set(extra, own.length);
  return all;
}

class Simplex {
  readonly #arcs: number;
  readonly #from: Int32Array;
  readonly #to: Int32Array;
  readonly #capacity: Float64Array;
  readonly #costs: Float64Array[];
  readonly #flow: Float64Array;
  readonly #state: Int8Array;
  readonly #tree: SpanningTree;
  readonly #block: number;
  readonly #best: Float64Array;
  readonly #shifts: Float64Array;
  #units = 0;
  #cutFirst = true;
  #next = 0;

  constructor(network: Network) {
    const nodes = network.gives.length + 1;
    const root = nodes - 1;
    const arcs = network.from.length;
    this.#arcs = arcs;
    const missing = network.gives.map((units) => (units < 0 ? 1 : 0));
    const none = missing.map(() => 0);
    this.#from = Int32Array.from([...network.from, ...missing.map((is, node) => (is ? root : node))]);
    this.#to = Int32Array.from([...network.to, ...missing.map((is, node) => (is ? node : root))]);
    this.#capacity = withRoot(
      network.capacity,
      missing.map(() => Infinity),
    );
    this.#flow = withRoot(new Float64Array(arcs), network.gives.map(Math.abs));
    this.#costs = joinGoals(
      [withRoot(new Float64Array(arcs), missing), ...network.goals.map((goal) => withRoot(goal, none))],
      nodes,
    );
    this.#state = new Int8Array(arcs + root).fill(LOWER, 0, arcs);
    const potentials = this.#costs.map((cost) =>
      Float64Array.from({ length: nodes }, (_, node) =>
        node < root && missing[node] ? (cost[arcs + node] as number) : 0,
      ),
    );
    this.#tree = new SpanningTree(
      nodes,
      none.map((_, node) => arcs + node),
      missing.map((is) => (is ? -1 : 1)),
      potentials,
    );
    this.#block = Math.max(10, Math.ceil(Math.sqrt(arcs) / 2));
    this.#best = new Float64Array(this.#costs.length);
    this.#shifts = new Float64Array(this.#costs.length);
  }

  /** One exchange of arcs; false when none makes the flow cheaper. */
  step(): boolean {
    const entering = this.#cheapening();
    if (entering < 0) return false;
    const forward = this.#state[entering] === LOWER;
    const first = (forward ? this.#from : this.#to)[entering] as number;
    const second = (forward ? this.#to : this.#from)[entering] as number;
    const meeting = this.#tree.meeting(first, second);
    const cut = this.#narrowest(entering, first, second, meeting);
    const units = this.#units;
    if (units > 0) {
      this.#flow[entering] = (this.#flow[entering] as number) + (forward ? units : -units);
      this.#push(first, meeting, -units);
      this.#push(second, meeting, units);
    }
    if (cut < 0) {
      this.#state[entering] = -(this.#state[entering] as number);
      return true;
    }
    const leaving = this.#tree.arc[cut] as number;
    this.#state[entering] = IN_TREE;
    this.#state[leaving] = this.#flow[leaving] === 0 ? LOWER : UPPER;
    const hung = this.#cutFirst ? first : second;
    const onto = this.#cutFirst ? second : first;
    const up = this.#from[entering] === hung ? 1 : -1;
    for (let goal = 0; goal < this.#costs.length; goal++) {
      const potential = this.#tree.potentials[goal] as Float64Array;
      this.#shifts[goal] =
        (potential[onto] as number) -
        (potential[hung] as number) -
        up * ((this.#costs[goal] as Float64Array)[entering] as number);
    }
    this.#tree.swap(cut, hung, onto, meeting, entering, up, this.#shifts);
    return true;
  }

  result(): CheapestFlow {
    if (this.#flow.subarray(this.#arcs).some((units) => units > 0))
      throw new Error('no flow gives and gets everything');
    return {
      flow: this.#flow.slice(0, this.#arcs),
      isOpen: Uint8Array.from({ length: this.#arcs }, (_, arc) => (this.#isFree(arc) ? 1 : 0)),
    };
  }

  #isFree(arc: number): boolean {
    return this.#costs.every((_, goal) => this.#price(goal, arc) === 0);
  }

  /** What a unit more on an arc adds to a goal when the tree's arcs make up for it. */
  #price(goal: number, arc: number): number {
    const potential = this.#tree.potentials[goal] as Float64Array;
    return (
      ((this.#costs[goal] as Float64Array)[arc] as number) +
      (potential[this.#from[arc] as number] as number) -
      (potential[this.#to[arc] as number] as number)
    );
  }

  /** The arc of the next block that cheapens most, of the first block that has any; −1 when none does. */
  #cheapening(): number {
    const goals = this.#costs.length;
    const best = this.#best;
    let entering = -1;
    let left = this.#block;
    let arc = this.#next;
    for (let looked = 0; looked < this.#arcs; looked++) {
      const state = this.#state[arc] as number;
      if (state !== IN_TREE) {
        for (let goal = 0; goal < goals; goal++) {
          const price = state * this.#price(goal, arc);
          const limit = entering < 0 ? 0 : (best[goal] as number);
          if (price > limit) break;
          if (price < limit || (entering < 0 && price < 0)) {
            entering = arc;
            for (let each = 0; each < goals; each++)
              best[each] = each === goal ? price : state * this.#price(each, arc);
            break;
          }
        }
      }
      arc = arc + 1 === this.#arcs ? 0 : arc + 1;
      left -= 1;
      if (left === 0) {
        if (entering >= 0) break;
        left = this.#block;
      }
    }
    this.#next = arc;
    return entering;
  }

  /**
   * Above which node the way around is narrowest, of several the last on the way from the meeting node; −1 where it is the entering arc. Leaves how
   * much can go around, and on which side that node is.
   */
  #narrowest(entering: number, first: number, second: number, meeting: number): number {
    const parent = this.#tree.parent;
    let units = this.#capacity[entering] as number;
    let cut = -1;
    for (let node = first; node !== meeting; node = parent[node] as number) {
      const here = this.#room(node, -1);
      if (here < units) {
        units = here;
        cut = node;
      }
    }
    this.#cutFirst = true;
    for (let node = second; node !== meeting; node = parent[node] as number) {
      const here = this.#room(node, 1);
      if (here <= units) {
        units = here;
        cut = node;
        this.#cutFirst = false;
      }
    }
    this.#units = units;
    return cut;
  }

  /** How much more can go over the arc above a node: up for 1, down for −1. */
  #room(node: number, along: number): number {
    const arc = this.#tree.arc[node] as number;
    const flow = this.#flow[arc] as number;
    return this.#tree.up[node] === along ? (this.#capacity[arc] as number) - flow : flow;
  }

  /** Moves units from a node up to one above it. */
  #push(from: number, to: number, units: number): void {
    const { arc, up, parent } = this.#tree;
    for (let node = from; node !== to; node = parent[node] as number) {
      const by = arc[node] as number;
      this.#flow[by] = (this.#flow[by] as number) + (up[node] as number) * units;
    }
  }
}
