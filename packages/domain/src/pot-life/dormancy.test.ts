import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../kernel/dates.ts';
import { InputError } from '../kernel/input.ts';
import { isDormant, looksDeadTooSoon } from './dormancy.ts';

const milkweed = { dormantMonths: [10, 11, 12, 1, 2, 3, 4], lastEmergenceMd: '05-31' };

describe('dormancy', () => {
  it('goes by the month', () => {
    expect(isDormant(milkweed.dormantMonths, '2026-10-01')).toBe(true);
    expect(isDormant(milkweed.dormantMonths, '2026-09-30')).toBe(false);
    expect(isDormant([], '2026-01-15')).toBe(false);
  });

  it.each([[[0]], [[13]], [[1.5]], [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]]])('refuses the months %j', (months) => {
    expect(() => isDormant(months, '2026-01-15')).toThrow(InputError);
  });
});

describe('looking dead', () => {
  it.each([
    ['2026-09-30', false],
    ['2026-10-01', true],
    ['2026-12-31', true],
    ['2027-01-01', true],
    ['2027-05-01', true],
    ['2027-05-30', true],
    ['2027-05-31', false],
    ['2027-07-01', false],
  ])('on %s is too soon to tell: %s', (on, tooSoon) => {
    expect(looksDeadTooSoon({ ...milkweed, on })).toBe(tooSoon);
  });

  it('without a last-emergence day goes by the dormant months', () => {
    expect(looksDeadTooSoon({ ...milkweed, lastEmergenceMd: null, on: '2027-04-30' })).toBe(true);
    expect(looksDeadTooSoon({ ...milkweed, lastEmergenceMd: null, on: '2027-05-01' })).toBe(false);
  });

  it('never applies to a plant that is not known to go dormant', () => {
    expect(looksDeadTooSoon({ dormantMonths: [], lastEmergenceMd: '05-31', on: '2027-01-01' })).toBe(false);
  });

  it('in a dormant month but past its last-emergence day is not too soon', () => {
    expect(
      looksDeadTooSoon({ dormantMonths: [10, 11, 12, 1, 2, 3, 4], lastEmergenceMd: '04-15', on: '2027-04-20' }),
    ).toBe(false);
  });

  it('covers a plant that sleeps through summer', () => {
    const bluebell = { dormantMonths: [6, 7, 8], lastEmergenceMd: '04-20' };
    expect(looksDeadTooSoon({ ...bluebell, on: '2026-07-01' })).toBe(true);
    expect(looksDeadTooSoon({ ...bluebell, on: '2027-02-01' })).toBe(true);
    expect(looksDeadTooSoon({ ...bluebell, on: '2027-04-20' })).toBe(false);
  });

  it('is always too soon while dormant and the last-emergence day lies after the dormant months', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3000 }), (offset) => {
        const on = addDays('2024-01-01', offset);
        return !isDormant(milkweed.dormantMonths, on) || looksDeadTooSoon({ ...milkweed, on });
      }),
    );
  });
});
