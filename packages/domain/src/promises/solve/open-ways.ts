import type { Network } from './cheapest-flow.ts';

/**
 * The ways over a flow's open arcs: along an arc while it has room, against it while it has flow. A way is written as 2·arc, plus 1 where it goes
 * against the arc.
 */
export class OpenWays {
  readonly #ways: Int32Array;
  /** Where the ways that begin at a node stand among all. */
  readonly #begin: Int32Array;
  readonly #settled: Uint8Array;
  /** Nodes from which each other can be reached bear the same number; moving flow never joins two groups. */
  readonly #group: Int32Array;
  readonly #seen: Int32Array;
  readonly #by: Int32Array;
  #search = 0;

  constructor(private readonly network: Network, private readonly flow: Float64Array, isOpen: Uint8Array) {
    const nodes = network.gives.length;
    const arcs = network.from.length;
    this.#settled = new Uint8Array(arcs);
    this.#begin = new Int32Array(nodes + 1);
    const isUsed = (way: number) => isOpen[way >> 1] === 1;
    for (let way = 0; way < 2 * arcs; way++) if (isUsed(way)) bump(this.#begin, this.#startOf(way) + 1);
    for (let node = 0; node < nodes; node++) this.#begin[node + 1] = (this.#begin[node + 1] as number) + (this.#begin[node] as number);
    this.#ways = new Int32Array(this.#begin[nodes] as number);
    const next = this.#begin.slice();
    for (let way = 0; way < 2 * arcs; way++) if (isUsed(way)) this.#ways[bump(next, this.#startOf(way))] = way;
    this.#seen = new Int32Array(nodes);
    this.#by = new Int32Array(nodes);
    this.#group = this.#groups(nodes);
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

  /** The shortest way from one node to another, or null. */
  find(start: number, end: number): number[] | null {
    if (this.#group[start] !== this.#group[end]) return null;
    const search = ++this.#search;
    this.#seen[start] = search;
    const queue = [start];
    for (let at = 0; at < queue.length; at++) {
      const node = queue[at] as number;
      for (let each = this.#begin[node] as number; each < (this.#begin[node + 1] as number); each++) {
        const way = this.#ways[each] as number;
        const next = this.#endOf(way);
        if (this.#seen[next] === search || this.#group[next] !== this.#group[start] || this.room(way) === 0) continue;
        this.#seen[next] = search;
        this.#by[next] = way;
        if (next === end) return this.#traced(start, end);
        queue.push(next);
      }
    }
    return null;
  }

  #traced(start: number, end: number): number[] {
    const ways: number[] = [];
    for (let node = end; node !== start; node = this.#startOf(ways.at(-1) as number)) ways.push(this.#by[node] as number);
    return ways;
  }

  #startOf(way: number): number {
    return ((way & 1) === 1 ? this.network.to : this.network.from)[way >> 1] as number;
  }

  #endOf(way: number): number {
    return ((way & 1) === 1 ? this.network.from : this.network.to)[way >> 1] as number;
  }

  /** Strongly connected components (R. Tarjan, SIAM Journal on Computing 1, 1972, 146–160; from memory), without recursion. */
  #groups(nodes: number): Int32Array {
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
        if (lowest[node] === found[node]) for (let member = -1; member !== node;) group[(member = stack.pop() as number)] = node;
      }
    }
    return group;
  }
}

/** Adds one and answers what was there before. */
function bump(counts: Int32Array, at: number): number {
  const before = counts[at] as number;
  counts[at] = before + 1;
  return before;
}
