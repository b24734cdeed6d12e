import { firstTree } from './first-tree.ts';
import { joinGoals } from './goals.ts';
import type { Network } from './network.ts';
import type { SpanningTree } from './spanning-tree.ts';

export interface CheapestFlow {
  flow: Float64Array;
  /** By arc, whether its flow may differ in another flow of the same cost. */
  isOpen: Uint8Array;
}

const LOWER = 1;
const IN_TREE = 0;
const UPPER = -1;

/**
 * The flow that gives and gets everything at the least cost, goal by goal, found from one that gives and gets everything already.
 *
 * Network simplex: a tree of arcs whose potentials price all others, one of which enters and one leaves at each step. The leaving arc is chosen so
 * that the tree stays strongly feasible, with which the method ends (W. H. Cunningham, A network simplex method, Mathematical Programming 11,
 * 1976, 105–116; from memory). The entering arc is the best of the first block that has one, the rule that did best in P. Kovács, Minimum-cost
 * flow algorithms: an experimental evaluation, Optimization Methods and Software 30, 2015, 94–127 (from memory).
 *
 * Arcs of the first flow that have flow and room and are not in the tree are brought into it or to one of their limits before anything is priced.
 */
export function cheapestFlow(network: Network, start: Float64Array): CheapestFlow {
  const simplex = new Simplex(network, start);
  simplex.settle();
  while (simplex.step());
  return simplex.result();
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

  constructor(network: Network, start: Float64Array) {
    const { gives, from, to, capacity, goals } = network;
    const root = gives.length;
    const arcs = from.length;
    this.#arcs = arcs;
    this.#from = from;
    this.#to = to;
    this.#capacity = new Float64Array(arcs + root).fill(Infinity);
    this.#capacity.set(capacity);
    this.#flow = new Float64Array(arcs + root);
    this.#flow.set(start);
    this.#costs = joinGoals(goals, root + 1);
    this.#state = new Int8Array(arcs + root).fill(LOWER);
    for (let arc = 0; arc < arcs; arc++) if (start[arc] === capacity[arc]) this.#state[arc] = UPPER;
    this.#tree = firstTree(network, start, this.#costs);
    for (let node = 0; node < root; node++) this.#state[this.#tree.arc[node] as number] = IN_TREE;
    this.#block = Math.max(10, Math.ceil(Math.sqrt(arcs) / 2));
    this.#best = new Float64Array(this.#costs.length);
    this.#shifts = new Float64Array(this.#costs.length);
  }

  /** Brings every arc that has flow and room into the tree or to one of its limits, never making the flow dearer. */
  settle(): void {
    for (let arc = 0; arc < this.#arcs; arc++)
      if (this.#state[arc] !== IN_TREE && this.#isLoose(arc)) this.#enter(arc, !this.#isDearer(arc));
  }

  /** One exchange of arcs; false when none makes the flow cheaper. */
  step(): boolean {
    const entering = this.#cheapening();
    if (entering < 0) return false;
    this.#enter(entering, this.#state[entering] === LOWER);
    return true;
  }

  /** Sends as much as there is room for around over an arc, along or against it, and lets it take the place of the tree's arc that is full then. */
  #enter(entering: number, forward: boolean): void {
    const first = (forward ? this.#from : this.#to)[entering] as number;
    const second = (forward ? this.#to : this.#from)[entering] as number;
    const meeting = this.#tree.meeting(first, second);
    const flow = this.#flow[entering] as number;
    const room = forward ? (this.#capacity[entering] as number) - flow : flow;
    const cut = this.#narrowest(room, first, second, meeting);
    const units = this.#units;
    if (units > 0) {
      this.#flow[entering] = flow + (forward ? units : -units);
      this.#push(first, meeting, -units);
      this.#push(second, meeting, units);
    }
    if (cut < 0) {
      this.#state[entering] = forward ? UPPER : LOWER;
      return;
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
  }

  result(): CheapestFlow {
    return {
      flow: this.#flow.slice(0, this.#arcs),
      isOpen: Uint8Array.from({ length: this.#arcs }, (_, arc) => (this.#isFree(arc) ? 1 : 0)),
    };
  }

  #isLoose(arc: number): boolean {
    const flow = this.#flow[arc] as number;
    return flow > 0 && flow < (this.#capacity[arc] as number);
  }

  /** Whether a unit more on an arc adds to the first goal that it changes. */
  #isDearer(arc: number): boolean {
    for (let goal = 0; goal < this.#costs.length; goal++) {
      const price = this.#price(goal, arc);
      if (price !== 0) return price > 0;
    }
    return false;
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

  /** The arc of the next block that cheapens most, of the first block that has one; −1 when none does. */
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
   * Above which node the way around is narrowest, of several the last on the way from the meeting node; −1 where it is the entering arc, of which
   * the room is given. Leaves how much can go around, and on which side that node is.
   */
  #narrowest(room: number, first: number, second: number, meeting: number): number {
    const parent = this.#tree.parent;
    let units = room;
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
