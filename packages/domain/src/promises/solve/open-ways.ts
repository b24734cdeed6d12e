import type { Network } from './network.ts';

/**
 * The ways over a flow's open arcs: along an arc while it has room, against it while it has flow. A way is written as 2·arc, plus 1 where it goes
 * against the arc.
 */
export class OpenWays {
  readonly #ways: Int32Array;
  /** Where the ways that begin at a node stand among all. */
  readonly #begin: Int32Array;
  readonly #settled: Uint8Array;
  /** No way around leads through nodes of different numbers, nor ever will: moving flow along ways around opens ways within a group only. */
  readonly #group: Int32Array;
  #groups: number;
  readonly #onward: Front;
  readonly #backward: Front;
  #search = 0;

  constructor(
    private readonly network: Network,
    private readonly flow: Float64Array,
    isOpen: Uint8Array,
  ) {
    const nodes = network.gives.length;
    const arcs = network.from.length;
    this.#settled = new Uint8Array(arcs);
    this.#begin = new Int32Array(nodes + 1);
    const isUsed = (way: number) => isOpen[way >> 1] === 1;
    for (let way = 0; way < 2 * arcs; way++) if (isUsed(way)) bump(this.#begin, this.#startOf(way) + 1);
    for (let node = 0; node < nodes; node++)
      this.#begin[node + 1] = (this.#begin[node + 1] as number) + (this.#begin[node] as number);
    this.#ways = new Int32Array(this.#begin[nodes] as number);
    const next = this.#begin.slice();
    for (let way = 0; way < 2 * arcs; way++) if (isUsed(way)) this.#ways[bump(next, this.#startOf(way))] = way;
    this.#onward = new Front(nodes);
    this.#backward = new Front(nodes);
    this.#group = this.#connected(nodes);
    this.#groups = nodes;
  }

  /** What can still go over a way. */
  room(way: number): number {
    const arc = way >> 1;
    if (this.#settled[arc] === 1) return 0;
    const flow = this.flow[arc] as number;
    return (way & 1) === 1 ? flow : (this.network.capacity[arc] as number) - flow;
  }

  /** Leaves an arc out from now on. */
  settle(arc: number): void {
    this.#settled[arc] = 1;
  }

  /**
   * A way from one node to another, as the ways that it consists of, or null. Looks from both ends in turn, so that what is found to lead nowhere
   * costs as much as the smaller part into which the group falls by that.
   */
  find(start: number, end: number): number[] | null {
    if (this.#group[start] !== this.#group[end]) return null;
    const search = ++this.#search;
    const onward = this.#onward.begin(start, search);
    const backward = this.#backward.begin(end, search);
    for (;;) {
      const [front, other, against] = onward.looked <= backward.looked ? [onward, backward, 0] : [backward, onward, 1];
      const node = front.next();
      if (node < 0) {
        this.#separate(front);
        return null;
      }
      for (let each = this.#begin[node] as number; each < (this.#begin[node + 1] as number); each++) {
        const way = this.#ways[each] as number;
        const next = this.#endOf(way);
        front.looked += 1;
        if (front.hasSeen(next) || this.#group[next] !== this.#group[node] || this.room(way ^ against) === 0) continue;
        front.reach(next, way);
        if (other.hasSeen(next))
          return [...this.#traced(onward, next), ...this.#traced(backward, next).map((back) => back ^ 1)];
      }
    }
  }

  /** From what a search reached nothing else is reached (or reaches it): it is a group of its own. */
  #separate(front: Front): void {
    const group = ++this.#groups;
    for (const node of front.reached()) this.#group[node] = group;
  }

  #traced({ by }: Front, from: number): number[] {
    const ways: number[] = [];
    for (let way = by[from] as number; way >= 0; way = by[this.#startOf(way)] as number) ways.push(way);
    return ways;
  }

  #startOf(way: number): number {
    return ((way & 1) === 1 ? this.network.to : this.network.from)[way >> 1] as number;
  }

  #endOf(way: number): number {
    return ((way & 1) === 1 ? this.network.from : this.network.to)[way >> 1] as number;
  }

  /** Strongly connected components (R. Tarjan, SIAM Journal on Computing 1, 1972, 146–160; from memory), without recursion. */
  #connected(nodes: number): Int32Array {
    const group = new Int32Array(nodes).fill(-1);
    const found = new Int32Array(nodes);
    const lowest = new Int32Array(nodes);
    const next = this.#begin.slice();
    const stack: number[] = [];
    let count = 0;
    for (let root = 0; root < nodes; root++) {
      if ((found[root] as number) > 0) continue;
      const path = [root];
      while (path.length > 0) {
        const node = path.at(-1) as number;
        if (found[node] === 0) {
          found[node] = lowest[node] = ++count;
          stack.push(node);
        }
        if ((next[node] as number) < (this.#begin[node + 1] as number)) {
          const way = this.#ways[bump(next, node)] as number;
          const reached = this.#endOf(way);
          if (this.room(way) === 0 || (group[reached] as number) >= 0) continue;
          if (found[reached] === 0) path.push(reached);
          else lowest[node] = Math.min(lowest[node] as number, found[reached] as number);
          continue;
        }
        path.pop();
        const parent = path.at(-1);
        if (parent !== undefined) lowest[parent] = Math.min(lowest[parent] as number, lowest[node] as number);
        if (lowest[node] === found[node])
          for (let member = -1; member !== node;) group[(member = stack.pop() as number)] = node;
      }
    }
    return group;
  }
}

/** The nodes that a search has reached from one end, and by which way each. */
class Front {
  readonly by: Int32Array;
  looked = 0;
  readonly #seen: Int32Array;
  readonly #queue: Int32Array;
  #search = 0;
  #at = 0;
  #count = 0;

  constructor(nodes: number) {
    this.by = new Int32Array(nodes);
    this.#seen = new Int32Array(nodes);
    this.#queue = new Int32Array(nodes);
  }

  begin(node: number, search: number): this {
    this.#search = search;
    this.#at = this.#count = this.looked = 0;
    this.reach(node, -1);
    return this;
  }

  hasSeen(node: number): boolean {
    return this.#seen[node] === this.#search;
  }

  reach(node: number, way: number): void {
    this.#seen[node] = this.#search;
    this.by[node] = way;
    this.#queue[this.#count++] = node;
  }

  /** The next node to look from; −1 when all have been. */
  next(): number {
    return this.#at < this.#count ? (this.#queue[this.#at++] as number) : -1;
  }

  reached(): Int32Array {
    return this.#queue.subarray(0, this.#count);
  }
}

/** Adds one and answers what was there before. */
function bump(counts: Int32Array, at: number): number {
  const before = counts[at] as number;
  counts[at] = before + 1;
  return before;
}
