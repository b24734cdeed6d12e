import { type CalendarDate, dateParts, fromDayNumber, toDayNumber } from '../kernel/dates.ts';
import { InputError, requireText } from '../kernel/input.ts';
import { type MonthDay, monthDayIn, requireMonthDay } from '../kernel/month-days.ts';
import { compareText } from '../kernel/text.ts';

/**
 * Days of the year on which plants may go out, both ends included; a window whose closing day lies before its opening
 * day runs over the year's end. Without a container limit or a region it is for all plants.
 */
export interface PlantingWindow {
  id: string;
  opensMd: MonthDay;
  closesMd: MonthDay;
  /** For plants in containers of at most so many millilitres, which frost heaves out of late plantings. */
  maxContainerMl?: number | null;
  /** For sites of this region. */
  region?: string | null;
}

/** A stretch of the year that is left after all windows that apply have been cut with each other. */
export interface DayRange {
  /** The narrowest window that this stretch comes from. */
  id: string;
  opensMd: MonthDay;
  closesMd: MonthDay;
}

export interface WindowsFor {
  /** False when no window at all applies, so that windows limit nothing. */
  configured: boolean;
  /** The stretches that are open, by opening day. Empty though configured when the windows have no day in common. */
  ranges: DayRange[];
}

/** One opening of a window, both days included. */
export interface WindowOpening {
  id: string;
  opensOn: CalendarDate;
  closesOn: CalendarDate;
}

// A stretch on the days of a leap year, 0 to 365. It never wraps: a window over the year's end is two of them.
interface Stretch {
  id: string;
  /** The windows it was cut from, by their place in the list. */
  pieces: number[];
  from: number;
  to: number;
}

const LEAP_YEAR = 2000;
const LAST_DAY = 365;

const dayOfYear = (md: MonthDay) => toDayNumber(monthDayIn(LEAP_YEAR, md)) - toDayNumber(`${LEAP_YEAR}-01-01`);
const monthDayOf = (day: number) => fromDayNumber(toDayNumber(`${LEAP_YEAR}-01-01`) + day).slice(5);

function stretchesOf({ id, opensMd, closesMd }: PlantingWindow, place: number): Stretch[] {
  const from = dayOfYear(requireMonthDay('opensMd', opensMd));
  const to = dayOfYear(requireMonthDay('closesMd', closesMd));
  const pieces = [place];
  if (from <= to) return [{ id, pieces, from, to }];
  return [
    { id, pieces, from: 0, to },
    { id, pieces, from, to: LAST_DAY },
  ];
}

function cut(narrow: Stretch[], wide: Stretch[]): Stretch[] {
  return narrow.flatMap((a) =>
    wide.flatMap((b) => {
      const from = Math.max(a.from, b.from);
      const to = Math.min(a.to, b.to);
      return from <= to ? [{ id: a.id, pieces: [...a.pieces, ...b.pieces], from, to }] : [];
    }),
  );
}

// Joins what a window over the year's end was parted into, so that people read one stretch from October to March.
function rejoin(stretches: Stretch[]): DayRange[] {
  const samePieces = (a: Stretch, b: Stretch) => a !== b && a.pieces.join() === b.pieces.join();
  return stretches.flatMap((stretch) => {
    const late =
      stretch.from === 0 ? stretches.find((other) => other.to === LAST_DAY && samePieces(stretch, other)) : undefined;
    if (late !== undefined) return [];
    const early =
      stretch.to === LAST_DAY ? stretches.find((other) => other.from === 0 && samePieces(stretch, other)) : undefined;
    return [{ id: stretch.id, opensMd: monthDayOf(stretch.from), closesMd: monthDayOf(early?.to ?? stretch.to) }];
  });
}

/**
 * The days of the year on which plants of a container may go out at a site. Windows for all, for a container class and
 * for a region are three kinds of say: within one kind (same limit, same region) windows add up, and each kind that
 * applies cuts the others. Plants whose container or site is not known are not cut by windows that ask for them.
 * Throws InputError for a day that does not exist.
 */
export function windowsFor(
  windows: readonly PlantingWindow[],
  { containerMl, region }: { containerMl?: number | null; region?: string | null },
): WindowsFor {
  const kinds = new Map<string, { maxMl: number; regional: boolean; stretches: Stretch[] }>();
  for (const [place, window] of windows.entries()) {
    requireText('id', window.id);
    const stretches = stretchesOf(window, place);
    const maxMl = window.maxContainerMl ?? Number.POSITIVE_INFINITY;
    if (!(maxMl > 0)) throw new InputError('maxContainerMl', 'must be more than 0 ml');
    const smallEnough = maxMl === Number.POSITIVE_INFINITY || (containerMl != null && containerMl <= maxMl);
    const inRegion = window.region == null || window.region === region;
    if (!smallEnough || !inRegion) continue;
    const key = `${maxMl} ${window.region == null ? '' : 'region'}`;
    const kind = kinds.get(key) ?? { maxMl, regional: window.region != null, stretches: [] };
    kind.stretches.push(...stretches);
    kinds.set(key, kind);
  }
  const narrowFirst = [...kinds.values()].sort(
    (a, b) => Number(b.regional) - Number(a.regional) || (a.maxMl < b.maxMl ? -1 : 1),
  );
  const [first, ...wider] = narrowFirst;
  if (first === undefined) return { configured: false, ranges: [] };
  const ranges = rejoin(wider.reduce((left, kind) => cut(left, kind.stretches), first.stretches));
  return {
    configured: true,
    ranges: ranges.sort(
      (a, b) => compareText(a.opensMd, b.opensMd) || compareText(a.closesMd, b.closesMd) || compareText(a.id, b.id),
    ),
  };
}

/** The opening of a stretch that begins in a year; over the year's end it closes in the next. */
export function openingIn(year: number, { id, opensMd, closesMd }: DayRange): WindowOpening {
  return {
    id,
    opensOn: monthDayIn(year, opensMd),
    closesOn: monthDayIn(closesMd < opensMd ? year + 1 : year, closesMd),
  };
}

/**
 * The last day on or before `on` that is open, with its opening, or null when nothing is ever open. Openings that began
 * in this year or the one before hold it, since every stretch opens each year.
 */
export function lastOpenDay(
  ranges: readonly DayRange[],
  on: CalendarDate,
): { on: CalendarDate; opening: WindowOpening } | null {
  const { year } = dateParts(on);
  let best: { on: CalendarDate; opening: WindowOpening } | null = null;
  for (const opening of ranges.flatMap((range) => [openingIn(year - 1, range), openingIn(year, range)])) {
    if (opening.opensOn > on) continue;
    const day = opening.closesOn < on ? opening.closesOn : on;
    if (best === null || day > best.on || (day === best.on && opening.opensOn < best.opening.opensOn))
      best = { on: day, opening };
  }
  return best;
}

/** The first opening that begins after `on`, or null when nothing is ever open. */
export function nextOpening(ranges: readonly DayRange[], on: CalendarDate): WindowOpening | null {
  const { year } = dateParts(on);
  const later = ranges
    .flatMap((range) => [openingIn(year, range), openingIn(year + 1, range)])
    .filter((opening) => opening.opensOn > on)
    .sort(
      (a, b) => compareText(a.opensOn, b.opensOn) || compareText(a.closesOn, b.closesOn) || compareText(a.id, b.id),
    );
  return later[0] ?? null;
}
