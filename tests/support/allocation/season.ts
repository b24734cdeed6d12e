// The open lines and the stock of a whole season, of a size and a shape that are asked for.
import {
  addDays,
  type AllocationCurrent,
  type AllocationDemand,
  type AllocationInstance,
  type AllocationSupply,
} from '@rootclock/domain';
import type { Chance } from '@rootclock/server/demo/random';
import { streamOf } from '../../bench/load/chance.ts';
import { isServing } from './goals.ts';

/**
 * `parts`: each plant has its own lots of two sizes and its own lines, which take either, and more stock than is asked for. `scarce`: every line takes a second plant as well, so that all
 * hang together, and more is asked for than there is.
 */
export type SeasonShape = 'parts' | 'scarce';

export interface Season {
  shape: SeasonShape;
  supplies: number;
  lines: number;
  /** How many ranks the lines have; as many as lines where each was promised by itself. */
  ranks: number;
}

const TODAY = '2027-03-01';
const SEASON_DAYS = 240;
const LOTS_OF_PLANT = { parts: 40, scarce: 20 };
/** Units asked for to units there are. */
const ASKED = { parts: 0.8, scarce: 1.2 };
const UNITS = { least: 5, most: 60 };

export function drawSeason({ shape, supplies, lines, ranks }: Season, seed: number): AllocationInstance {
  const chance = streamOf(seed, `season of ${shape}`, supplies);
  const plants = Math.ceil(supplies / LOTS_OF_PLANT[shape]);
  const idOf = (letter: string, at: number) => `${letter}${String(at).padStart(6, '0')}`;
  const sizeOf = (at: number) => (shape === 'parts' ? Math.floor(at / plants) % 2 : 0);
  const itemOf = (at: number, size = sizeOf(at)) => `plant-${at % plants}@size-${size}`;
  const supply = Array.from({ length: supplies }, (_, at): AllocationSupply => {
    const ready = chance.whole(0, (3 * SEASON_DAYS) / 4);
    const plantBy = ready + chance.whole(SEASON_DAYS / 6, (5 * SEASON_DAYS) / 6);
    return {
      id: idOf('S', at),
      item: itemOf(at),
      units: chance.whole(UNITS.least, UNITS.most),
      readyOn: addDays(TODAY, ready),
      plantByOn: chance.share() < 0.15 ? null : addDays(TODAY, plantBy),
      unitValue: 50 * chance.whole(4, 30),
    };
  });
  const asked = (ASKED[shape] * supply.reduce((sum, { units }) => sum + units, 0)) / lines;
  const demand = Array.from({ length: lines }, (_, at): AllocationDemand => {
    const next = at + 1 + (chance.share() < 0.1 ? chance.whole(0, plants - 1) : 0);
    const instead = {
      item: shape === 'parts' ? itemOf(at, 1 - sizeOf(at)) : itemOf(next),
      penalty: chance.whole(1, 5),
    };
    return {
      id: idOf('D', at),
      rank: 1 + Math.floor((((at * 7919) % lines) * ranks) / lines),
      on: addDays(TODAY, chance.whole(SEASON_DAYS / 4, (3 * SEASON_DAYS) / 4)),
      units: chance.whole(Math.ceil(asked / 2), Math.ceil(1.5 * asked)),
      refuses: [],
      accepts: [{ item: itemOf(at), penalty: 0 }, instead],
    };
  });
  return {
    today: TODAY,
    horizonOn: addDays(TODAY, SEASON_DAYS),
    supply,
    demand,
    current: drawHoldings(chance, supply, demand),
  };
}

/** Every other line holds something of a few lots that serve it. */
function drawHoldings(
  chance: Chance,
  supply: readonly AllocationSupply[],
  demand: readonly AllocationDemand[],
): AllocationCurrent[] {
  const lotsOf = new Map<string, AllocationSupply[]>();
  for (const lot of supply) lotsOf.set(lot.item, [...(lotsOf.get(lot.item) ?? []), lot]);
  return demand
    .filter(() => chance.share() < 0.5)
    .flatMap((line) =>
      (lotsOf.get(line.accepts[0]?.item ?? '') ?? [])
        .filter((lot) => isServing(lot, line) && chance.share() < 0.2)
        .map((lot) => ({ supply: lot.id, demand: line.id, units: chance.whole(1, UNITS.least) })),
    );
}
