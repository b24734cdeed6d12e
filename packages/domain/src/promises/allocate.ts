import { Holdings, reckonAnswer } from './answer.ts';
import { requireInstance } from './instance/faults.ts';
import type { AllocationAnswer, AllocationInstance } from './instance/instance.ts';
import { takeOutPins } from './instance/pins.ts';
import { componentsOf } from './solve/components.ts';
import { filledByRank } from './solve/fills.ts';
import { assignPart } from './solve/solve-transport.ts';
import { readTransport } from './solve/transport.ts';

/**
 * Which units go to which demand, exactly, by these goals in this order: (1) pinned units stay; (2) units filled, rank by rank, so that none of a
 * lower rank is given up for any number of later ones, equal ranks counting together; (3) least penalty; (4) most value saved of plants that must
 * be planted within the horizon; (5) least days from today to the plant-by days of what is given, 36,500 where there is none, so that the
 * plants that run out of pot life go out first; (6) fewest units moved away from `current`; (7) in order of supply and then demand, as many
 * units as can be on the first pair, then on the second, and so on. The last leaves one answer, whatever the order of input.
 *
 * Whole units; money in minor units. Throws InputError naming the value for an instance that makes no sense.
 *
 * Method: ranks are filled along augmenting paths, the rest is a minimum-cost flow with the fills fixed, by a network simplex that starts from
 * that filling and compares costs goal by goal; parts that share nothing are solved apart.
 */
export function allocate(input: AllocationInstance): AllocationAnswer {
  const instance = requireInstance(input);
  const { pins, rest } = takeOutPins(instance);
  const transport = readTransport(rest);
  const { flow } = filledByRank(transport);
  const held = new Holdings();
  const given = componentsOf(transport).flatMap((part) => assignPart(part, flow));
  for (const { supply, demand, units } of pins.concat(given)) held.add(supply, demand, units);
  return reckonAnswer(instance, held);
}
