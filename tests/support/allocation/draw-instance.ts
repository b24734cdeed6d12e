// Instances by chance, with all that makes allocation hard close together: ties, edges of intervals, nothing there, pins, holdings that no longer fit.
import {
  addDays,
  type AcceptedItem,
  type AllocationCurrent,
  type AllocationDemand,
  type AllocationInstance,
  type AllocationSupply,
} from '@rootclock/domain';
import type { Chance } from '@rootclock/server/demo/random';
import { streamOf } from '../../bench/load/chance.ts';
import { isServing } from './goals.ts';

export interface Shape {
  /** Most supplies and most demands. */
  rows: number;
  /** Most units of a supply or a demand. */
  units: number;
  items: number;
}

/** Small enough that all answers can be looked through. */
export const TINY: Shape = { rows: 4, units: 3, items: 2 };
export const SMALL: Shape = { rows: 6, units: 12, items: 3 };
export const LARGE: Shape = { rows: 24, units: 40, items: 6 };

const TODAY = '2027-04-20';
const LAST_DAY = 20;

/** The instance of this number; the same for the same seed, number and shape. */
export function drawInstance(seed: number, number: number, shape: Shape): AllocationInstance {
  const chance = streamOf(seed, `allocation of ${shape.rows}`, number);
  const often = chance.share();
  // What is drawn from few values ties; an instance of which all ties is as likely as one of which little does.
  const few = (least: number, most: number) =>
    chance.share() < often ? chance.pick([least, most]) : chance.whole(least, most);
  // Half of them have lots that serve for long and lines that take most items, so that much hangs together.
  const wide = chance.share() < 0.5;
  const someDay = (last: number) => addDays(TODAY, few(0, last) - 2);
  const items = Array.from({ length: chance.whole(1, shape.items) }, (_, at) => `item-${at}`);
  const supply = Array.from({ length: chance.whole(1, shape.rows) }, (_, at): AllocationSupply => {
    const readyOn = someDay(wide ? 3 : LAST_DAY);
    const plantByOn = chance.share() < 0.25 ? null : addDays(readyOn, few(wide ? 14 : 0, LAST_DAY));
    return {
      id: `S${at + 1}`,
      item: chance.pick(items),
      units: chance.share() < 0.1 ? 0 : few(1, shape.units),
      readyOn,
      plantByOn,
      unitValue: few(0, 900),
    };
  });
  const edges = supply.flatMap(({ readyOn, plantByOn }) => [readyOn, ...(plantByOn === null ? [] : [plantByOn])]);
  const demand = Array.from({ length: chance.whole(1, shape.rows) }, (_, at): AllocationDemand => ({
    id: `D${at + 1}`,
    rank: few(1, 1 + shape.rows),
    on: chance.share() < 0.4 ? chance.pick(edges) : someDay(LAST_DAY),
    units: few(1, shape.units),
    refuses: supply.filter(() => chance.share() < 0.1).map(({ id }) => id),
    accepts: items
      .filter(() => chance.share() < (wide ? 0.9 : 0.7))
      .map((item): AcceptedItem => ({ item, penalty: few(0, 3) })),
  }));
  return {
    today: TODAY,
    horizonOn: addDays(TODAY, few(0, LAST_DAY)),
    supply,
    demand,
    current: drawCurrent(chance, supply, demand, shape),
  };
}

function drawCurrent(
  chance: Chance,
  supply: readonly AllocationSupply[],
  demand: readonly AllocationDemand[],
  { units }: Shape,
): AllocationCurrent[] {
  const left = new Map([...supply, ...demand].map((row) => [row.id, row.units]));
  return Array.from({ length: chance.whole(0, supply.length + demand.length) }, (): AllocationCurrent => {
    const [from, to] = [chance.pick(supply), chance.pick(demand)];
    const most = Math.min(left.get(from.id) ?? 0, left.get(to.id) ?? 0);
    // Only what serves and is there can be pinned; floating holdings may be of anything.
    if (chance.share() > 0.35 || most === 0 || !isServing(from, to))
      return { supply: from.id, demand: to.id, units: chance.whole(1, units) };
    const pinned = chance.whole(1, most);
    for (const { id } of [from, to]) left.set(id, (left.get(id) ?? 0) - pinned);
    return { supply: from.id, demand: to.id, units: pinned, pinned: true };
  });
}

/** The same instance with every list in another order. */
export function shuffled(instance: AllocationInstance, seed: number): AllocationInstance {
  const chance = streamOf(seed, 'order of rows');
  const mix = <T>(rows: readonly T[]): T[] =>
    rows
      .map((row) => ({ row, at: chance.share() }))
      .sort((a, b) => a.at - b.at)
      .map(({ row }) => row);
  return {
    ...instance,
    supply: mix(instance.supply),
    demand: mix(instance.demand).map((row) => ({ ...row, accepts: mix(row.accepts), refuses: mix(row.refuses ?? []) })),
    current: mix(instance.current ?? []),
  };
}
