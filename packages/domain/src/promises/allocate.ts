import { Holdings, reckonAnswer } from './answer.ts';
import { requireInstance } from './instance/faults.ts';
import type { AllocationAnswer, AllocationInstance } from './instance/instance.ts';
import { takeOutPins } from './instance/pins.ts';
import { componentsOf } from './solve/components.ts';
import { solveTransport } from './solve/solve-transport.ts';
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
 * Method: parts that share nothing are solved apart; ranks are filled along augmenting paths, the rest is a minimum-cost flow with the fills
 * fixed, by a network simplex whose costs are compared goal by goal.
 */
export function allocate(input: AllocationInstance): AllocationAnswer {
  const instance = requireInstance(input);
  const held = new Holdings();
  const { pins, rest } = takeOutPins(instance);
  for (const { supply, demand, units } of pins) held.add(supply, demand, units);
  for (const part of componentsOf(readTransport(rest))) {
    for (const [at, units] of solveTransport(part).entries()) {
      const pair = part.pairs[at];
      const [supply, demand] = [part.supplies[pair?.supply ?? -1], part.demands[pair?.demand ?? -1]];
      if (units > 0 && supply && demand) held.add(supply.id, demand.id, units);
    }
  }
  return reckonAnswer(instance, held);
}
