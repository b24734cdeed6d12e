import type { Network } from './network.ts';
import { SpanningTree } from './spanning-tree.ts';

/**
 * A tree for a flow that gives and gets everything: each node hangs by an arc that leaves it and has flow and room, and where none does, on an
 * extra root. Such an arc to the root, arcs + node by its number, can never take any flow, since nothing leads back from there; so it costs
 * nothing, and every node has room up to the root, which is what `cheapestFlow` has to keep. `costs` are those of the arcs, goal by goal.
 */
export function firstTree(
  { gives, from, to, capacity }: Network,
  flow: Float64Array,
  costs: readonly Float64Array[],
): SpanningTree {
  const root = gives.length;
  const arcs = from.length;
  const parents = new Int32Array(root + 1).fill(root);
  const hangBy = Int32Array.from({ length: root + 1 }, (_, node) => arcs + node);
  parents[root] = hangBy[root] = -1;
  for (let arc = 0; arc < arcs; arc++) {
    const units = flow[arc] as number;
    const node = from[arc] as number;
    if (units === 0 || units === capacity[arc] || parents[node] !== root) continue;
    parents[node] = to[arc] as number;
    hangBy[node] = arc;
  }
  const potentials = costs.map((cost) => {
    const potential = new Float64Array(root + 1);
    // Parents have higher numbers than what hangs on them, so theirs are there before.
    for (let node = root - 1; node >= 0; node--) {
      const arc = hangBy[node] as number;
      if (arc < arcs) potential[node] = (potential[parents[node] as number] as number) - (cost[arc] as number);
    }
    return potential;
  });
  return new SpanningTree(parents, hangBy, potentials);
}
