import { plantBy, type PotLifeRule } from '@rootclock/domain';
import { describe, expect, it } from 'vitest';

/*
 * The one-year limit is common practice of the trade without a published source: milkweeds, and other taproot plants, leave
 * the pot within one year; later they decline. The calendar reading is that of ISO 8601 durations, P1Y.
 */
const milkweeds: PotLifeRule = { id: 'milkweeds', basis: 'confined', span: 'P1Y', reach: { genus: 'Asclepias' } };
const windows = [
  { id: 'spring', opensMd: '04-15', closesMd: '06-15' },
  { id: 'autumn', opensMd: '09-01', closesMd: '10-15' },
];
const potted = (on: string) => ({ confinedOn: on, containerOn: on, rules: [milkweeds] });

describe('a milkweed under the one-year rule', () => {
  it('potted on 14 April 2026 is to be planted by 15 October 2026, since one day costs half a year', () => {
    expect(plantBy({ ...potted('2026-04-14'), windows }).plantByOn).toBe('2026-10-15');
    expect(plantBy({ ...potted('2026-04-15'), windows }).plantByOn).toBe('2027-04-15');
  });

  it.each([
    ['2023-02-28', '2024-02-28'],
    ['2023-03-01', '2024-03-01'],
    ['2024-02-28', '2025-02-28'],
    ['2024-02-29', '2025-02-28'],
    ['2024-03-01', '2025-03-01'],
    ['2027-12-31', '2028-12-31'],
  ])('potted on %s has until its calendar anniversary %s', (on, anniversary) => {
    expect(plantBy({ ...potted(on), windows: [] }).plantByOn).toBe(anniversary);
  });

  it('may be planted through a window that runs over the year’s end', () => {
    const dormant = [{ id: 'dormant', opensMd: '10-20', closesMd: '03-10' }];
    expect(plantBy({ ...potted('2026-01-20'), windows: dormant }).plantByOn).toBe('2027-01-20');
    expect(plantBy({ ...potted('2026-05-05'), windows: dormant }).plantByOn).toBe('2027-03-10');
    expect(plantBy({ ...potted('2025-10-25'), windows: dormant }).plantByOn).toBe('2026-10-25');
  });

  it('whose limit falls in winter is pulled back to autumn, or carried to spring where that is allowed', () => {
    const december = potted('2026-12-10');
    expect(plantBy({ ...december, windows }).plantByOn).toBe('2027-10-15');
    const carrying = [{ ...milkweeds, winterCarry: { maxDays: 130, graceDays: 14 } }];
    const dormantMonths = [10, 11, 12, 1, 2, 3, 4];
    expect(plantBy({ ...december, rules: carrying, windows, dormantMonths })).toMatchObject({
      state: 'winter-carry',
      carriedFromOn: '2027-12-10',
      plantByOn: '2028-04-29',
    });
  });

  it('in a plug tray over winter counts from its emergence the summer before', () => {
    const overwintered = {
      confinedOn: '2026-07-20',
      containerOn: '2026-07-20',
      readyOn: '2027-04-25',
      rules: [milkweeds],
      windows,
    };
    expect(plantBy(overwintered)).toMatchObject({ state: 'window', plantByOn: '2027-06-15', limitOn: '2027-07-20' });
    const moved = { ...overwintered, containerOn: '2027-06-20', readyOn: '2027-07-05' };
    expect(plantBy(moved)).toMatchObject({ state: 'no-window', plantByOn: '2027-07-20', nextOpensOn: '2027-09-01' });
  });
});
