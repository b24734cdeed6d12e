import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../kernel/dates.ts';
import { SEASONS } from '../../kernel/rough-days.ts';
import { seasonOf, tallyDays } from './day-tally.ts';
import { type LedgerDay, lossExposure } from './loss-exposure.ts';

const winter = { fromMd: '11-15', toMd: '04-14' };
const day = (on: string, units: number, lost = 0, lostToWinter = 0) => ({ on, units, lost, lostToWinter });

const exposureOf = (days: LedgerDay[], today: string) => lossExposure(days, tallyDays('2024-06-01', today, winter));

describe('lossExposure', () => {
  test('plants times the days they stood, in the season in which they stood', () => {
    // 40 plants from 20 May: 12 days of spring and 19 of summer up to 20 June.
    const { seasons, growing } = exposureOf([day('2026-05-20', 40)], '2026-06-20');
    expect([seasons.spring.plantDays, seasons.summer.plantDays, growing.plantDays]).toEqual([480, 760, 1240]);
  });

  test('who left no longer stands from that day on', () => {
    const { growing } = exposureOf([day('2026-06-01', 10), day('2026-06-11', -4, 4)], '2026-06-21');
    expect(growing).toEqual({ plantDays: 160, losses: 4 });
  });

  test('what winter took counts to winter, though it was found out in May', () => {
    const { seasons, growing } = exposureOf([day('2025-06-01', 10), day('2026-05-10', -3, 0, 3)], '2026-05-10');
    expect([seasons.winter.losses, seasons.spring.losses, growing.losses]).toEqual([3, 0, 0]);
  });

  test('days of winter are no days of growing', () => {
    // From 15 November to 14 April are 151 days; the year around them has 365.
    expect(exposureOf([day('2025-06-01', 1)], '2026-06-01').growing.plantDays).toBe(214);
  });

  test('more found than missed is no negative loss', () => {
    expect(exposureOf([day('2026-06-01', 10), day('2026-06-02', 2, -2)], '2026-06-11').growing).toEqual({
      plantDays: 118,
      losses: 0,
    });
  });

  test('the seasons share all plant-days among them', () => {
    const changes = fc.array(
      fc.record({ after: fc.integer({ min: 0, max: 800 }), units: fc.integer({ min: 1, max: 500 }) }),
      { maxLength: 20 },
    );
    fc.assert(
      fc.property(changes, (came) => {
        const today = '2026-08-01';
        const from = '2024-06-01';
        const { seasons } = exposureOf(
          came.map(({ after, units }) => day(addDays(from, after), units)),
          today,
        );
        const whole = came.reduce((sum, { after, units }) => sum + units * Math.max(0, 791 - after), 0);
        expect(SEASONS.reduce((sum, season) => sum + seasons[season].plantDays, 0)).toBe(whole);
      }),
    );
  });
});

test('days before the tally are refused', () => {
  expect(() => exposureOf([day('2024-05-31', 1)], '2026-06-01')).toThrow(expect.objectContaining({ argument: 'day' }));
});

test('seasons are the meteorological ones of the north', () => {
  expect(['2026-02-28', '2026-03-01', '2026-06-01', '2026-09-01', '2026-12-01'].map(seasonOf)).toEqual([
    'winter',
    'spring',
    'summer',
    'autumn',
    'winter',
  ]);
});
