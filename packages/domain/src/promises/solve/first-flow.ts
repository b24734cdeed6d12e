import type { CheapestFlow } from './cheapest-flow.ts';
import type { Network } from './network.ts';
import { OpenWays } from './open-ways.ts';

/**
 * Of all flows of the same least cost the first: as much as can be on the first arc, then on the second, and so on, of so many. Changes the flow
 * that it is given. Flows of equal cost differ by ways around over open arcs, so an arc can carry more where such a way leads from its end back
 * to its beginning; once it carries all it can it is settled.
 */
export function firstFlow(network: Network, { flow, isOpen }: CheapestFlow, count: number): void {
  const { from, to, capacity } = network;
  const ways = new OpenWays(network, flow, isOpen);
  for (let arc = 0; arc < count; arc++) {
    if (isOpen[arc] !== 1) continue;
    ways.settle(arc);
    for (;;) {
      const spare = (capacity[arc] as number) - (flow[arc] as number);
      const back = spare > 0 ? ways.find(to[arc] as number, from[arc] as number) : null;
      if (!back) break;
      let units = spare;
      for (const way of back) units = Math.min(units, ways.room(way));
      flow[arc] = (flow[arc] as number) + units;
      for (const way of back) flow[way >> 1] = (flow[way >> 1] as number) + ((way & 1) === 1 ? -units : units);
    }
  }
}
