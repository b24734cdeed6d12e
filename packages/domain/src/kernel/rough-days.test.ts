import { describe, expect, it } from 'vitest';
import { InputError } from './input.ts';
import { earliestOfDay } from './rough-days.ts';

describe('a day known roughly', () => {
  it.each([
    ['2026-04-14', '2026-04-14', '2026-04-14', 'day'],
    ['2026-04', '2026-04-01', '2026-04-30', 'month'],
    ['2024-02', '2024-02-01', '2024-02-29', 'month'],
    ['2026-12', '2026-12-01', '2026-12-31', 'month'],
    ['2026-spring', '2026-03-01', '2026-05-31', 'season'],
    ['2026-summer', '2026-06-01', '2026-08-31', 'season'],
    ['2026-autumn', '2026-09-01', '2026-11-30', 'season'],
    ['2026-winter', '2025-12-01', '2026-02-28', 'season'],
    ['2024-winter', '2023-12-01', '2024-02-29', 'season'],
    ['2026', '2026-01-01', '2026-12-31', 'year'],
  ])('%s lies from %s to %s', (value, earliestOn, latestOn, precision) => {
    expect(earliestOfDay(value)).toEqual({ earliestOn, latestOn, precision });
  });

  it.each(['2026-13', '2026-00', '2026-fall', '26', '2026-02-30', '0000', '', 'spring', '2026-4'])(
    'refuses %j',
    (value) => {
      expect(() => earliestOfDay(value, 'receivedOn')).toThrow(InputError);
      expect(() => earliestOfDay(value, 'receivedOn')).toThrow(/^receivedOn: /);
    },
  );
});
