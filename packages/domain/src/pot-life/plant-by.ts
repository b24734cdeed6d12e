import { addDays, type CalendarDate, daysBetween, earliestOf, latestOf, requireDate } from '../kernel/dates.ts';
import { InputError } from '../kernel/input.ts';
import { type MonthDay, nextMonthDay, requireMonthDay } from '../kernel/month-days.ts';
import { addSpan } from '../kernel/spans.ts';
import { compareText } from '../kernel/text.ts';
import { isDormant, requireDormantMonths } from './dormancy.ts';
import { mostParticular, POT_LIFE_BASES, type PotLifeBasis, type PotLifeRule } from './rules.ts';
import {
  type DayRange,
  lastOpenDay,
  nextOpening,
  type PlantingWindow,
  type WindowOpening,
  type WindowsFor,
  windowsFor,
} from './windows.ts';

/**
 * How a plant-by day came about. `window`: the last open day before the limit. `limit-only`: no windows are set, the
 * limit itself. `no-window`: no open day is left before the limit, the limit itself. `winter-carry`: past the limit,
 * early in the next window. `unlimited`: no rule binds.
 */
export const PLANT_BY_STATES = ['window', 'limit-only', 'no-window', 'winter-carry', 'unlimited'] as const;
export type PlantByState = (typeof PLANT_BY_STATES)[number];

export interface PlantByInput {
  /** Since when roots are confined in a cell or pot; null when they are not, or nothing has emerged. */
  confinedOn?: CalendarDate | null;
  /** Since when the plants stand in this container; null in the ground. */
  containerOn?: CalendarDate | null;
  /** From when they can be planted at all, checked or expected. */
  readyOn?: CalendarDate | null;
  /** Rules that reach these plants; of each basis the most particular counts (see `winningRules`). */
  rules: readonly PotLifeRule[];
  /** All windows of the nursery; those for other containers or regions are left out here. */
  windows: readonly PlantingWindow[];
  containerMl?: number | null;
  region?: string | null;
  /** The nursery's freeze day; needed as soon as a no-winter rule is among the rules. */
  freezeMd?: MonthDay | null;
  /** Months (1 to 12) in which the plant is dormant; none means that winter carry never applies. */
  dormantMonths?: readonly number[];
  /** Whether the plants stand where the cold cannot reach them, so that no-winter rules do not bind. */
  coldSheltered?: boolean;
}

export interface PlantByResult {
  state: PlantByState;
  /** The day by which the plants must be out, that day included. Null only when `unlimited`. */
  plantByOn: CalendarDate | null;
  /** The last day the binding rule allows by itself. */
  limitOn: CalendarDate | null;
  ruleId: string | null;
  basis: PotLifeBasis | null;
  /** The opening in which the plant-by day lies. */
  window: WindowOpening | null;
  /** The first opening after the limit: what a lot misses that was not planted in time. */
  nextOpensOn: CalendarDate | null;
  /** With `winter-carry`, the limit that is passed over; both days are to be shown, and the root ball is checked first. */
  carriedFromOn?: CalendarDate;
}

interface Candidate {
  rule: PotLifeRule;
  limitOn: CalendarDate;
  state: Exclude<PlantByState, 'unlimited'>;
  plantByOn: CalendarDate;
  window: WindowOpening | null;
}

function limitOf(
  rule: PotLifeRule,
  { confinedOn, containerOn, freezeMd, coldSheltered }: PlantByInput,
): CalendarDate | null {
  if (rule.basis === 'no-winter') {
    if (freezeMd == null) throw new InputError('freezeMd', 'must be set, since a rule forbids these plants the winter');
    return containerOn == null || coldSheltered === true
      ? null
      : nextMonthDay(containerOn, requireMonthDay('freezeMd', freezeMd));
  }
  const since = rule.basis === 'confined' ? confinedOn : containerOn;
  return since == null || rule.span === null ? null : addSpan(since, rule.span);
}

function carryOf(
  rule: PotLifeRule,
  limitOn: CalendarDate,
  ranges: readonly DayRange[],
  dormantMonths: readonly number[],
) {
  const opening = nextOpening(ranges, limitOn);
  if (rule.winterCarry == null || opening === null || !isDormant(dormantMonths, limitOn)) return null;
  if (daysBetween(limitOn, opening.opensOn) > rule.winterCarry.maxDays) return null;
  // A grace longer than the window would end on a day on which nothing may be planted.
  return { opening, on: earliestOf(addDays(opening.opensOn, rule.winterCarry.graceDays), opening.closesOn) };
}

function candidateOf(
  rule: PotLifeRule,
  limitOn: CalendarDate,
  fromOn: CalendarDate | null,
  { configured, ranges }: WindowsFor,
  dormantMonths: readonly number[],
): Candidate {
  if (!configured) return { rule, limitOn, state: 'limit-only', plantByOn: limitOn, window: null };
  const last = lastOpenDay(ranges, limitOn);
  const usable = last !== null && (fromOn === null || last.on >= fromOn) ? last : null;
  if (usable?.on !== limitOn) {
    // Only a limit between two windows is carried: one inside a window loses nothing by being kept.
    const carry = last?.on === limitOn ? null : carryOf(rule, limitOn, ranges, dormantMonths);
    if (carry !== null && (fromOn === null || carry.on >= fromOn)) {
      return { rule, limitOn, state: 'winter-carry', plantByOn: carry.on, window: carry.opening };
    }
  }
  if (usable === null) return { rule, limitOn, state: 'no-window', plantByOn: limitOn, window: null };
  return { rule, limitOn, state: 'window', plantByOn: usable.on, window: usable.opening };
}

function requireDays(input: PlantByInput): void {
  for (const argument of ['confinedOn', 'containerOn', 'readyOn'] as const) {
    const on = input[argument];
    if (on != null) requireDate(argument, on);
  }
  requireDormantMonths('dormantMonths', input.dormantMonths ?? []);
}

/**
 * The day by which plants must be in the ground, and why.
 *
 * Each basis's most particular rule sets a limit: its span from the confined or the container day, or for a no-winter
 * rule the first freeze day on or after the container day (on the freeze day itself: that day). The limit is still
 * allowed. It is pulled back to the last day of a planting window that is no later than the limit and no earlier than
 * the container and ready days. A rule with winter carry instead goes forward to the next window's opening plus its
 * grace, when the limit lies between windows, in a dormant month, and at most `maxDays` before that opening. The rule
 * whose plant-by day comes first binds; ties go to the earlier limit, then the order of POT_LIFE_BASES.
 *
 * Without winter carry an earlier confined or container day never gives a later plant-by day. With it that can happen:
 * a limit on the last dormant day is carried to the spring, one a day later, when the plants are awake, is pulled back to
 * the autumn. The one-year limit of taproots is common practice without a published source.
 *
 * Throws InputError for a day that does not exist, a rule or window that cannot be applied, or a missing freeze day.
 */
export function plantBy(input: PlantByInput): PlantByResult {
  requireDays(input);
  const starts = [input.containerOn, input.readyOn].filter((on): on is CalendarDate => on != null);
  const fromOn = starts.length > 0 ? latestOf(...starts) : (input.confinedOn ?? null);
  const open = windowsFor(input.windows, input);
  const candidates = mostParticular(input.rules)
    .flatMap((rule) => {
      const limitOn = limitOf(rule, input);
      return limitOn === null ? [] : [candidateOf(rule, limitOn, fromOn, open, input.dormantMonths ?? [])];
    })
    .sort(
      (a, b) =>
        compareText(a.plantByOn, b.plantByOn) ||
        compareText(a.limitOn, b.limitOn) ||
        POT_LIFE_BASES.indexOf(a.rule.basis) - POT_LIFE_BASES.indexOf(b.rule.basis),
    );
  const [binding] = candidates;
  if (binding === undefined) {
    return {
      state: 'unlimited',
      plantByOn: null,
      limitOn: null,
      ruleId: null,
      basis: null,
      window: null,
      nextOpensOn: null,
    };
  }
  const { rule, limitOn, plantByOn, window } = binding;
  const firstLimitOn = earliestOf(...candidates.map((candidate) => candidate.limitOn));
  // A second rule may bind inside the window to which the first one's limit was carried: it is a carry all the same.
  const carried = plantByOn > firstLimitOn;
  return {
    state: carried ? 'winter-carry' : binding.state,
    plantByOn,
    limitOn,
    ruleId: rule.id,
    basis: rule.basis,
    window,
    nextOpensOn: nextOpening(open.ranges, limitOn)?.opensOn ?? null,
    ...(carried ? { carriedFromOn: firstLimitOn } : {}),
  };
}
