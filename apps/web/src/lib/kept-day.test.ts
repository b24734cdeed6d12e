import { describe, expect, it } from 'vitest';
import { dayToBegin, isKeptDay, keptLate } from './kept-day.ts';

describe('a day that is kept', () => {
  it('is there for the rest of the day', () => {
    expect(dayToBegin(keptLate('2026-05-18', '2026-05-20', '2026-05-20'), '2026-05-20')).toBe('2026-05-18');
  });

  it('is over with the day on which it was kept', () => {
    expect(dayToBegin(keptLate('2026-05-18', '2026-05-20', '2026-05-20'), '2026-05-21')).toBe('2026-05-21');
  });

  it('is not yesterday where it was today when the entry was made, and the answer came after midnight', () => {
    expect(dayToBegin(keptLate('2026-05-20', '2026-05-20', '2026-05-21'), '2026-05-21')).toBe('2026-05-21');
  });

  it('is the one chosen where the answer to an older day came after midnight', () => {
    expect(dayToBegin(keptLate('2026-05-18', '2026-05-20', '2026-05-21'), '2026-05-21')).toBe('2026-05-18');
  });

  it('is nothing that an older version kept without its day', () => {
    expect(['2026-05-18', null, {}, { on: '2026-05-18' }, { on: 1, today: 2 }].map(isKeptDay)).toEqual([
      false,
      false,
      false,
      false,
      false,
    ]);
    expect(isKeptDay({ on: '2026-05-18', today: '2026-05-20' })).toBe(true);
  });
});
