import { cheapestFlow } from './cheapest-flow.ts';
import { filledByRank } from './fills.ts';
import { firstFlow } from './first-flow.ts';
import type { Transport } from './transport.ts';
import { networkOf } from './transport-network.ts';

/** Units of each pair by the goals of `allocate`, in their order: fills rank by rank, then everything else with these fills fixed. */
export function solveTransport(transport: Transport): Float64Array {
  const { network, flow, pairOf } = networkOf(transport, filledByRank(transport).flow);
  const cheapest = cheapestFlow(network, flow);
  firstFlow(network, cheapest, pairOf.length);
  const units = new Float64Array(transport.pairs.length);
  for (let arc = 0; arc < pairOf.length; arc++) {
    const pair = pairOf[arc] as number;
    units[pair] = (units[pair] as number) + (cheapest.flow[arc] as number);
  }
  return units;
}
