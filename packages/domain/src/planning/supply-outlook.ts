import { addDays, type CalendarDate, latestOf } from '../kernel/dates.ts';
import { requireWhole } from '../kernel/input.ts';
import type { PlanDemand, PlanSupply } from './demand-facts.ts';
import { type Given, livingShare, serveDemands } from './missing.ts';
import { mondayOf, PLAN_WEEKS, weekStart } from './weeks.ts';

/** One item in one week. */
export interface WeekOutlook {
  startsOn: CalendarDate;
  /** Plants that can go out in it, when all that is fetched before has gone. */
  plants: number;
  orders: number;
  expected: number;
  /** What of the week's demand nothing serves. */
  short: number;
}

const HAIR = 1e-9;

/** The supply as it stands at the end of a week, or on its last day, without what was given before; nothing before it is ready or past its day. */
function plantsIn(
  supply: PlanSupply,
  { monday, sunday, today }: { monday: CalendarDate; sunday: CalendarDate; today: CalendarDate },
  given: readonly Given[],
): number {
  if (
    supply.readyOn === null ||
    supply.readyOn > sunday ||
    (supply.plantByOn !== null && supply.plantByOn < latestOf(monday, today))
  )
    return 0;
  const on = supply.plantByOn !== null && supply.plantByOn < sunday ? supply.plantByOn : sunday;
  const gone = given
    .filter((row) => row.on < monday)
    .reduce((units, row) => units + row.plants / livingShare(supply, row.on), 0);
  return Math.floor(Math.max(0, supply.units - gone) * livingShare(supply, on) + HAIR);
}

/**
 * Supply and demand of an item by week from this week's Monday, for so many weeks (1 to PLAN_WEEKS). All demand is served as the plan serves it, since
 * others may take of the same plants. Whole plants. Throws InputError for weeks out of range, and as serveDemands does.
 */
export function supplyOutlook(
  item: string,
  {
    today,
    weeks,
    demands,
    supplies,
  }: { today: CalendarDate; weeks: number; demands: readonly PlanDemand[]; supplies: readonly PlanSupply[] },
): WeekOutlook[] {
  requireWhole('weeks', weeks, 1, PLAN_WEEKS);
  const firstOn = weekStart(today);
  const { given, short } = serveDemands(demands, supplies);
  const own = supplies.filter((supply) => supply.item === item);
  const givenOf = new Map(own.map(({ id }) => [id, given.filter(({ supplyId }) => supplyId === id)]));
  const asked = demands.filter(({ plantId, containerId }) => `${plantId}@${containerId}` === item);
  return Array.from({ length: weeks }, (_, week): WeekOutlook => {
    const monday = mondayOf(firstOn, week);
    const sunday = addDays(monday, 6);
    const isIn = ({ on }: PlanDemand) => on >= monday && on <= sunday;
    const unitsOf = (firm: boolean) =>
      asked
        .filter((demand) => isIn(demand) && (demand.rank !== null) === firm)
        .reduce((sum, { units }) => sum + units, 0);
    return {
      startsOn: monday,
      plants: own.reduce(
        (sum, supply) => sum + plantsIn(supply, { monday, sunday, today }, givenOf.get(supply.id) ?? []),
        0,
      ),
      orders: unitsOf(true),
      expected: unitsOf(false),
      short: short
        .filter(({ demand }) => isIn(demand) && asked.includes(demand))
        .reduce((sum, { units }) => sum + units, 0),
    };
  });
}
