import { type CalendarDate, dateOf, dateParts, daysInMonth, fromDayNumber, toDayNumber } from './dates.ts';
import { InputError } from './input.ts';

/** A calendar span, already summed: whole months (a year is twelve) and whole days (a week is seven). */
export interface Span {
  months: number;
  days: number;
}

// ISO 8601 duration, the calendar part only: hours have no meaning for a plant's day.
const SPAN_FORM = /^P(?=\d)(?:(\d{1,3})Y)?(?:(\d{1,4})M)?(?:(\d{1,4})W)?(?:(\d{1,5})D)?$/;

/**
 * Reads an ISO 8601 span of years, months, weeks and days ('P1Y', 'P1Y6M', 'P24W', 'P170D'). Throws InputError naming
 * the argument for anything else, for a time part, and for a span of nothing ('P0D'), which would limit a plant to no day.
 */
export function requireSpan(argument: string, value: unknown): Span {
  const match = typeof value === 'string' ? SPAN_FORM.exec(value) : null;
  if (match === null) {
    throw new InputError(argument, 'must be a span such as P1Y, P6M, P24W or P170D', { value: String(value) });
  }
  const months = Number(match[1] ?? 0) * 12 + Number(match[2] ?? 0);
  const days = Number(match[3] ?? 0) * 7 + Number(match[4] ?? 0);
  if (months === 0 && days === 0)
    throw new InputError(argument, 'must be longer than nothing', { value: String(value) });
  return { months, days };
}

/** Whether the value is a span that `addSpan` takes. */
export function isSpan(value: unknown): value is string {
  const match = typeof value === 'string' ? SPAN_FORM.exec(value) : null;
  return match !== null && match.slice(1).some((digits) => digits !== undefined && Number(digits) > 0);
}

function shift(on: CalendarDate, months: number, days: number): CalendarDate {
  const { year, month, day } = dateParts(on);
  const counted = year * 12 + (month - 1) + months;
  const toYear = Math.floor(counted / 12);
  const toMonth = counted - toYear * 12 + 1;
  const anniversary = dateOf({ year: toYear, month: toMonth, day: Math.min(day, daysInMonth(toYear, toMonth)) });
  return days === 0 ? anniversary : fromDayNumber(toDayNumber(anniversary) + days);
}

/**
 * The calendar day a span later: years and months first, kept within the month they reach (29 Feb + P1Y is 28 Feb,
 * 31 Jan + P1M is the last of February), weeks and days after. Throws InputError for a bad date or span.
 */
export function addSpan(on: CalendarDate, span: string): CalendarDate {
  const { months, days } = requireSpan('span', span);
  return shift(on, months, days);
}

/**
 * The calendar day a span earlier, by the same rule. It does not undo `addSpan` at month ends: 28 Feb 2025 − P1Y is
 * 28 Feb 2024, though 29 Feb 2024 + P1Y is the same 28 Feb 2025.
 */
export function subtractSpan(on: CalendarDate, span: string): CalendarDate {
  const { months, days } = requireSpan('span', span);
  return shift(on, -months, -days);
}
