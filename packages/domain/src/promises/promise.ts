import type { CalendarDate } from '../kernel/dates.ts';
import { compareText } from '../kernel/text.ts';
import { explainIn, type ShortageExplanation } from './explain-shortage.ts';
import { demandClaims, requireInstance } from './instance/faults.ts';
import type { AcceptedItem, AllocationDemand, AllocationInstance, AllocationSupply } from './instance/instance.ts';
import { linkedPart } from './instance/linked-part.ts';
import { takeOutPins } from './instance/pins.ts';
import { isServedOn, supplyServes } from './instance/supply-serves.ts';
import { componentsOf } from './solve/components.ts';
import { filledByRank } from './solve/fills.ts';
import { assignPart } from './solve/solve-transport.ts';
import { readTransport } from './solve/transport.ts';

/** What somebody would like to be promised: a line behind all others. */
export interface PromiseAsk {
  accepts: readonly AcceptedItem[];
  /** Supplies that were judged unfit for it, whatever the day. */
  refuses?: readonly string[];
  /** The last day on which plants of a supply may leave for this line, where that is before their plant-by day. */
  leaveBy?: ReadonlyMap<string, CalendarDate>;
  /** Whole units, 1 or more. */
  units: number;
  on: CalendarDate;
}

export interface PromiseAnswer {
  /** The most of the asked units that can be promised for the day without shortening any line. */
  units: number;
  /** The first day, not before the one asked for, on which all of it can be promised; null when there is none. */
  firstOn: CalendarDate | null;
  /** The last day before the one asked for, from today on, on which all of it can be promised; null when there is none. */
  lastBeforeOn: CalendarDate | null;
  /** What the new line would hold once all lines are allocated together with it, by supply. */
  from: { supply: string; units: number }[];
  /** Where all other units of the items that it accepts are, in numbers. */
  inTheWay: Pick<ShortageExplanation, 'unservedUnits' | 'promisedToOthers' | 'promisedToOthersUnits'>;
}

/**
 * How much of an ask can be promised so that no rank of the instance's lines has a unit less, and on which day nearest to it all of it can. The
 * line takes the last rank and gets what augmenting paths reach once all others are filled, so that one unit more would be short. Later days
 * help only where a supply becomes ready, earlier ones only where one may still leave, so no other days are tried.
 * Throws InputError naming the value, as in 'ask.units' or 'supply[2].units', when ask or instance make no sense.
 *
 * All lines are filled once: the days are looked at from there, and so is the allocation with the new line, which only has to be filled in
 * addition, and of which only the parts are solved that hold the line or plants that would serve it.
 */
export function promise(input: AllocationInstance, ask: PromiseAsk): PromiseAnswer {
  const { instance, line, pins, transport, filling, lastDayOf, unitsOn } = prepare(input, ask);
  const { supplies, demands } = transport;
  const units = unitsOn(ask.on);
  const isMetOn = (on: CalendarDate) => (on === ask.on ? units : unitsOn(on)) === ask.units;
  const later = ordered(supplies.map(({ readyOn }) => readyOn)).filter((on) => on > ask.on);
  const earlier = ordered(supplies.flatMap((supply) => lastDayOf(supply) ?? []))
    .filter((on) => instance.today <= on && on < ask.on)
    .reverse();
  const [firstOn, lastBeforeOn] = [[ask.on, ...later].find(isMetOn) ?? null, earlier.find(isMetOn) ?? null];
  filling.fill(
    demands.findIndex(({ id }) => id === line.id),
    ask.units,
  );
  const given = componentsOf(transport)
    .filter((part) => part.demands.some(({ id }) => id === line.id) || part.supplies.some((row) => mayServe(row, line)))
    .flatMap((part) => assignPart(part, filling.flow));
  const { unservedUnits, promisedToOthers, promisedToOthersUnits } = explainIn(instance, line, pins.concat(given));
  return {
    units,
    firstOn,
    lastBeforeOn,
    from: given.filter((row) => row.demand === line.id).map((row) => ({ supply: row.supply, units: row.units })),
    inTheWay: { unservedUnits, promisedToOthers, promisedToOthersUnits },
  };
}

/** Only the most units of an ask that can be promised for its day, as `promise` answers them. */
export function promisableUnits(input: AllocationInstance, ask: PromiseAsk): number {
  return prepare(input, ask).unitsOn(ask.on);
}

const mayServe = (supply: AllocationSupply, line: AllocationDemand) => supplyServes(supply, line).serves;

/** The lines that matter to an ask, filled, with the ask as one more that has nothing yet. */
function prepare(input: AllocationInstance, ask: PromiseAsk) {
  const instance = linkedPart(requireInstance(input), ask.accepts);
  const line = lineOf(ask, instance);
  const lastDayOf = ({ id, plantByOn }: AllocationSupply) => ask.leaveBy?.get(id) ?? plantByOn;
  const daysOf = (supply: AllocationSupply) => ({ readyOn: supply.readyOn, plantByOn: lastDayOf(supply) });
  const unfit = instance.supply.filter((supply) => !isServedOn(daysOf(supply), ask.on)).map(({ id }) => id);
  const withLine = { ...line, refuses: [...(ask.refuses ?? []), ...unfit] };
  const { pins, rest } = takeOutPins({ ...instance, demand: [...instance.demand, withLine] });
  const transport = readTransport(rest);
  const filling = filledByRank(
    transport,
    transport.demands.findIndex(({ id }) => id === line.id),
  );
  filling.closeSpent();
  const [items, refused] = [new Set(ask.accepts.map(({ item }) => item)), new Set(ask.refuses)];
  const fitting = [...transport.supplies.entries()]
    .filter(([, { id, item }]) => items.has(item) && !refused.has(id))
    .map(([at, supply]) => ({ at, ...daysOf(supply) }));
  const unitsOn = (on: CalendarDate) =>
    filling.spare(
      fitting.filter((supply) => isServedOn(supply, on)).map(({ at }) => at),
      ask.units,
    );
  return { instance, line, pins, transport, filling, lastDayOf, unitsOn };
}

const ordered = (days: readonly CalendarDate[]) => [...new Set(days)].sort(compareText);

/** The ask as a line of its own, behind all others. */
function lineOf({ accepts, refuses = [], units, on }: PromiseAsk, { demand }: AllocationInstance): AllocationDemand {
  // Longer than any other id, so it is none of them.
  const id = demand.reduce((longest, row) => (row.id.length >= longest.length ? `${row.id}+` : longest), 'ask');
  const line = {
    id,
    rank: 1 + demand.reduce((last, { rank }) => Math.max(last, rank), 0),
    on,
    units,
    refuses,
    accepts,
  };
  for (const claim of demandClaims('ask', line)) claim();
  return line;
}
