import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  dateOf,
  daysBetween,
  earliestOf,
  fromDayNumber,
  isCalendarDate,
  latestOf,
  requireDate,
  toDayNumber,
} from './dates.ts';
import { InputError } from './input.ts';

const dayNumber = fc.integer({ min: toDayNumber('1800-01-01'), max: toDayNumber('2400-12-31') });

describe('calendar dates', () => {
  it.each([
    '2026-02-29',
    '2100-02-29',
    '2026-04-31',
    '2026-13-01',
    '2026-00-10',
    '2026-1-1',
    '0000-01-01',
    '2026-04-14T00:00',
    '',
    null,
    20260414,
  ])('refuse %j', (value) => {
    expect(isCalendarDate(value)).toBe(false);
  });

  it.each(['2024-02-29', '2000-02-29', '0001-01-01', '9999-12-31'])('accept %s', (value) => {
    expect(isCalendarDate(value)).toBe(true);
  });

  it('name the argument that was wrong', () => {
    expect(() => requireDate('pottedOn', '2026-02-30')).toThrow(InputError);
    expect(() => requireDate('pottedOn', '2026-02-30')).toThrow(/^pottedOn: /);
  });

  it('count from 1 January 1970', () => {
    expect(toDayNumber('1970-01-01')).toBe(0);
    expect(toDayNumber('2000-03-01')).toBe(11_017);
    expect(toDayNumber('1969-12-31')).toBe(-1);
  });

  it('survive the way to a day number and back', () => {
    fc.assert(fc.property(dayNumber, (n) => toDayNumber(fromDayNumber(n)) === n));
  });

  it('agree with the platform calendar in UTC on every day', () => {
    fc.assert(fc.property(dayNumber, (n) => fromDayNumber(n) === new Date(n * 86_400_000).toISOString().slice(0, 10)));
  });

  it('reach both ends of the calendar', () => {
    expect(fromDayNumber(toDayNumber('0001-01-01'))).toBe('0001-01-01');
    expect(fromDayNumber(toDayNumber('9999-12-31'))).toBe('9999-12-31');
    expect(() => addDays('9999-12-31', 1)).toThrow(InputError);
    expect(() => addDays('0001-01-01', -1)).toThrow(InputError);
  });

  it('sort as text in the order of days', () => {
    fc.assert(fc.property(dayNumber, dayNumber, (a, b) => fromDayNumber(a) < fromDayNumber(b) === a < b));
  });

  it('are not made of parts that make no day', () => {
    expect(dateOf({ year: 2024, month: 2, day: 29 })).toBe('2024-02-29');
    for (const parts of [
      { year: 2026, month: 2, day: 29 },
      { year: 2026, month: 13, day: 1 },
      { year: 2026, month: 1, day: 1.5 },
    ]) {
      expect(() => dateOf(parts)).toThrow(InputError);
    }
  });

  it('step over a leap day', () => {
    expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
    expect(addDays('2023-02-28', 1)).toBe('2023-03-01');
    expect(daysBetween('2024-02-28', '2024-03-01')).toBe(2);
    expect(daysBetween('2026-03-01', '2026-02-28')).toBe(-1);
  });

  it('refuse half days', () => {
    expect(() => addDays('2026-01-01', 0.5)).toThrow(/^days: /);
    expect(() => fromDayNumber(Number.NaN)).toThrow(/^dayNumber: /);
  });

  it('know the earliest and the latest of several', () => {
    expect(latestOf('2026-01-02', '2026-03-01', '2025-12-31')).toBe('2026-03-01');
    expect(earliestOf('2026-01-02', '2026-03-01', '2025-12-31')).toBe('2025-12-31');
    expect(() => latestOf()).toThrow(InputError);
  });
});
