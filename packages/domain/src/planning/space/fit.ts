import type { CalendarDate } from '../../kernel/dates.ts';
import type { StartDraft } from '../start/draft.ts';
import { sizeOf, type StartSize, trayful } from '../start/size.ts';
import { type AreaByWeek, areaOfStart, noArea, sumOfAreas } from './area.ts';
import type { ProgrammeChoice, SolveProgramme } from './programme.ts';

/** The bench area of a nursery: what there is, and what stands on it already by week. Square centimetres. */
export interface PlanSpace {
  /** Null where nobody measured any bench: then nothing is left out for want of space. */
  capacityCm2: number | null;
  standingCm2: AreaByWeek;
}

/** A batch with the size that is planned; null where none of it fits. */
export interface SizedStart {
  draft: StartDraft;
  /** The size that would meet all that is wanted. */
  full: StartSize;
  size: StartSize | null;
  /** Weeks without room for more of it. */
  fullWeeks: number[];
}

export interface Fitted {
  starts: SizedStart[];
  /** Of what is planned, without what stands already. */
  plannedCm2: AreaByWeek;
  /** By which share a better plan could exist at most; 0 where there is none. */
  within: number;
}

/** So many sizes of one batch are weighed against each other, more where there are few batches; of larger ones trays are taken several at a time. */
const LEAST_SIZES = 8;
const MOST_CHOICES = 400;

interface Option {
  name: string;
  at: number;
  size: StartSize;
  area: AreaByWeek;
  firmUnits: number;
  value: number;
}

const isFirm = (rank: number | null) => rank !== null;

/** What the first `plants` of a batch are worth: it serves orders first, then what is most valuable. */
function worthOf({ wanted }: StartDraft, plants: number, neutralValue: number): { firmUnits: number; value: number } {
  let left = plants;
  let firmUnits = 0;
  let value = 0;
  for (const { demand, units } of wanted) {
    const served = Math.min(left, units);
    left -= served;
    if (isFirm(demand.rank)) firmUnits += served;
    value += served * (demand.unitValue ?? neutralValue);
  }
  return { firmUnits, value };
}

/** Sizes from the smallest tray to the full one, evenly spread where there are many. */
function optionsOf(
  start: Pick<SizedStart, 'draft' | 'full'>,
  at: number,
  most: number,
  { confidence, neutralValue, firstOn }: FitFacts,
): Option[] {
  const { draft, full } = start;
  const step = trayful(draft);
  const steps = Math.ceil(full.counted / step);
  const sizes = Array.from(
    { length: Math.min(steps, most) },
    (_, nth) => Math.round(((nth + 1) * steps) / Math.min(steps, most)) * step,
  );
  return sizes.flatMap((counted, nth): Option[] => {
    const size = counted === full.counted ? full : sizeOf(draft, counted, confidence);
    return size.plants === 0
      ? []
      : [
          {
            name: `x${at}_${nth}`,
            at,
            size,
            area: areaOfStart(draft, size, firstOn),
            ...worthOf(draft, size.plants, neutralValue),
          },
        ];
  });
}

export interface FitFacts {
  confidence: number;
  /** What a plant counts as where nobody said what it is worth. */
  neutralValue: number;
  /** The Monday of the first week. */
  firstOn: CalendarDate;
}

/**
 * The sizes of batches that serve the most within the bench area: first the most plants for orders, since those are promised, and then, with what
 * was taken for them kept, the most value. Whole trays, one size a batch. Where everything fits, and where no bench was measured, all is planned in full
 * and the solver is not asked.
 */
export async function fitToSpace(
  starts: readonly Pick<SizedStart, 'draft' | 'full'>[],
  { capacityCm2, standingCm2 }: PlanSpace,
  facts: FitFacts,
  solve: SolveProgramme,
): Promise<Fitted> {
  const areas = starts.map(({ draft, full }) => areaOfStart(draft, full, facts.firstOn));
  const room = standingCm2.map((cm2) => Math.max(0, (capacityCm2 ?? Number.MAX_SAFE_INTEGER) - cm2));
  const whole = sumOfAreas(areas);
  const tight = room.flatMap((cm2, week) => ((whole[week] ?? 0) > cm2 ? [week] : []));
  const inTheWay = starts.flatMap((start, at) =>
    tight.some((week) => (areas[at]?.[week] ?? 0) > 0) ? [{ start, at }] : [],
  );
  if (inTheWay.length === 0)
    return {
      starts: starts.map((start) => ({ ...start, size: start.full, fullWeeks: [] })),
      plannedCm2: whole,
      within: 0,
    };

  const most = Math.max(LEAST_SIZES, Math.floor(MOST_CHOICES / inTheWay.length));
  const groups = inTheWay.map(({ start, at }) => optionsOf(start, at, most, facts));
  const { taken, within } = await best(
    groups,
    tight.map((week) => ({ week, cm2: room[week] ?? 0 })),
    solve,
  );
  const contested = new Set(inTheWay.map(({ at }) => at));
  const sized = starts.map((start, at) => ({
    ...start,
    size: contested.has(at) ? (taken.get(at)?.size ?? null) : start.full,
  }));
  const planned = sumOfAreas(
    sized.map(({ size }, at) => (size === null ? noArea() : (taken.get(at)?.area ?? areas[at] ?? noArea()))),
  );
  const more = (at: number, week: number) => (areas[at]?.[week] ?? 0) - (taken.get(at)?.area[week] ?? 0);
  return {
    starts: sized.map((start, at) => ({
      ...start,
      fullWeeks:
        start.size === start.full
          ? []
          : tight.filter((week) => more(at, week) > (room[week] ?? 0) - (planned[week] ?? 0)),
    })),
    plannedCm2: planned,
    within,
  };
}

interface WeekLimit {
  week: number;
  cm2: number;
}

/** One goal: what each option adds to the one taken already, in worth and in area. */
async function improve(
  groups: readonly Option[][],
  limits: readonly WeekLimit[],
  taken: ReadonlyMap<number, Option>,
  worth: (option: Option) => number,
  solve: SolveProgramme,
) {
  const areaIn = (at: number, week: number) => taken.get(at)?.area[week] ?? 0;
  const used = limits.map(({ week }) => [...taken.values()].reduce((sum, option) => sum + (option.area[week] ?? 0), 0));
  const rows = groups.map((group) =>
    group.flatMap((option): ProgrammeChoice[] => {
      const before = taken.get(option.at);
      const gain = worth(option) - (before ? worth(before) : 0);
      if (gain <= 0 || (before && option.size.counted < before.size.counted)) return [];
      return [
        {
          name: option.name,
          worth: gain,
          takes: limits.flatMap(({ week }, limit) => {
            const amount = (option.area[week] ?? 0) - areaIn(option.at, week);
            return amount > 0 ? [{ limit, amount }] : [];
          }),
        },
      ];
    }),
  );
  const { chosen, within } = await solve({
    groups: rows.filter((group) => group.length > 0),
    limits: limits.map(({ cm2 }, limit) => cm2 - (used[limit] ?? 0)),
  });
  const names = new Set(chosen);
  const better = groups
    .flat()
    .filter(({ name }) => names.has(name))
    .map((option) => [option.at, option] as const);
  return { taken: new Map([...taken, ...better]), within };
}

async function best(
  groups: readonly Option[][],
  limits: readonly WeekLimit[],
  solve: SolveProgramme,
): Promise<{ taken: ReadonlyMap<number, Option>; within: number }> {
  const isForOrders = groups.some((group) => group.some(({ firmUnits }) => firmUnits > 0));
  const none = { taken: new Map<number, Option>(), within: 0 };
  const orders = isForOrders ? await improve(groups, limits, none.taken, ({ firmUnits }) => firmUnits, solve) : none;
  const all = await improve(groups, limits, orders.taken, ({ value }) => value, solve);
  return { taken: all.taken, within: Math.max(orders.within, all.within) };
}
