import type { Assignment } from '../instance/instance.ts';
import { cheapestFlow } from './cheapest-flow.ts';
import type { Part } from './components.ts';
import { firstFlow } from './first-flow.ts';
import { networkOf } from './transport-network.ts';

/**
 * What demands hold of supplies by the goals of `allocate`, in order of the part's pairs: filled as a filling of the whole has it, rank by rank,
 * and by all further goals with these fills fixed.
 */
export function assignPart(part: Part, filling: Float64Array): Assignment[] {
  const { supplies, demands, pairs, pairAt } = part;
  const { network, flow, pairOf } = networkOf(
    part,
    Float64Array.from(pairAt, (at) => filling[at] as number),
  );
  const cheapest = cheapestFlow(network, flow);
  firstFlow(network, cheapest, pairOf.length);
  const units = new Float64Array(pairs.length);
  for (let arc = 0; arc < pairOf.length; arc++) {
    const pair = pairOf[arc] as number;
    units[pair] = (units[pair] as number) + (cheapest.flow[arc] as number);
  }
  return pairs.flatMap((pair, at): Assignment[] => {
    const [supply, demand] = [supplies[pair.supply], demands[pair.demand]];
    const given = units[at] as number;
    return given > 0 && supply && demand ? [{ supply: supply.id, demand: demand.id, units: given }] : [];
  });
}
