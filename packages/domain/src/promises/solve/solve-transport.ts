import { type Network, cheapestFlow } from './cheapest-flow.ts';
import { filledByRank } from './fills.ts';
import { firstFlow } from './first-flow.ts';
import type { Transport } from './transport.ts';

/** Units of each pair by the goals of `allocate`, in their order: fills rank by rank, then everything else with these fills fixed. */
export function solveTransport(transport: Transport): number[] {
  const { pairs } = transport;
  const { network, arcsOf } = networkOf(transport, filledByRank(transport).fills);
  const cheapest = cheapestFlow(network);
  firstFlow(network, cheapest, arcsOf.flat());
  return pairs.map((_, pair) => (arcsOf[pair] as number[]).reduce((sum, arc) => sum + (cheapest.flow[arc] as number), 0));
}

interface Arc {
  from: number;
  to: number;
  capacity: number;
  penalty: number;
  lostValue: number;
  days: number;
  moved: number;
}

/**
 * Supplies give all their units: to demands, or to one node where what nobody gets is left. A demand that is alone in its rank gets the rank's
 * fill; demands of equal rank pass it on to a node of their rank, so that they share it as the later goals have it.
 */
function networkOf({ supplies, demands, units, wanted, rankAt, pairs }: Transport, fills: ReadonlyMap<number, number>): { network: Network; arcsOf: number[][] } {
  const leftAt = supplies.length + demands.length;
  const gives = [...units, ...demands.map(() => 0), 0];
  const arcs: Arc[] = [];
  const costless = { penalty: 0, lostValue: 0, days: 0, moved: 0 };
  const sharing = new Map<number, number[]>();
  for (const [demand, rank] of rankAt.entries()) {
    const members = sharing.get(rank);
    if (members) members.push(demand);
    else sharing.set(rank, [demand]);
  }

  const mostValue = pairs.reduce((most, { savedValue }) => Math.max(most, savedValue), 0);
  const arcsOf = pairs.map(({ supply, demand, penalty, savedValue, days, held }) => {
    const most = Math.min(units[supply] as number, wanted[demand] as number);
    const kept = Math.min(held, most);
    const own = { from: supply, to: supplies.length + demand, penalty, lostValue: mostValue - savedValue, days };
    // What the demand holds already is no move; what is more than that is, for as much as the total of all fills is fixed.
    const parts = [{ ...own, capacity: kept, moved: 0 }, { ...own, capacity: most - kept, moved: 1 }].filter(({ capacity }) => capacity > 0);
    return parts.map((arc) => arcs.push(arc) - 1);
  });
  for (const [supply, most] of units.entries()) arcs.push({ from: supply, to: leftAt, capacity: most, ...costless });
  for (const [rank, members] of sharing) {
    const fill = fills.get(rank) ?? 0;
    gives[leftAt] = (gives[leftAt] as number) + fill;
    if (members.length === 1) {
      gives[supplies.length + (members[0] as number)] = -fill;
      continue;
    }
    const shared = gives.push(-fill) - 1;
    for (const demand of members) arcs.push({ from: supplies.length + demand, to: shared, capacity: wanted[demand] as number, ...costless });
  }
  gives[leftAt] = (gives[leftAt] as number) - units.reduce((sum, each) => sum + each, 0);
  const goals = (['penalty', 'lostValue', 'days', 'moved'] as const).map((goal) => Float64Array.from(arcs, (arc) => arc[goal]));
  return { network: { gives, from: Int32Array.from(arcs, ({ from }) => from), to: Int32Array.from(arcs, ({ to }) => to), capacity: Float64Array.from(arcs, ({ capacity }) => capacity), goals }, arcsOf };
}
