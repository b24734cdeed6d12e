import { describe, expect, it } from 'vitest';
import { datesIn } from './dates.ts';

const dates = datesIn('en', '2026-04-14', 'America/Chicago');
const season = (name: string) => name;

describe('dates', () => {
  it('leaves the year out where it is this one', () => {
    expect([dates.short('2026-05-03'), dates.short('2027-05-03')]).toEqual(['May 3', 'May 3, 2027']);
  });

  it('keeps a calendar day the same day in every time zone', () => {
    expect(dates.long('2026-01-01')).toBe('January 1, 2026');
  });

  it("counts the days from the nursery's today", () => {
    expect([dates.fromToday('2026-04-26'), dates.fromToday('2026-04-14'), dates.fromToday('2026-04-11')]).toEqual([
      'in 12 days',
      'today',
      '3 days ago',
    ]);
  });

  it('says a rough day as it was remembered', () => {
    expect([
      dates.rough('2026-04-01', 'month', season),
      dates.rough('2025-12-01', 'season', season),
      dates.rough('2026-01-01', 'year', season),
    ]).toEqual(['April 2026', 'winter 2026', '2026']);
  });

  it("shows an instant by the nursery's clock", () => {
    expect(dates.instant('2026-04-14T03:30:00Z')).toMatch(/Apr 13, 2026.*10:30/);
  });

  it('speaks Spanish', () => {
    expect(datesIn('es', '2026-04-14', 'America/Chicago').long('2026-04-14')).toBe('14 de abril de 2026');
  });
});
