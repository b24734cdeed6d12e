import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, fromDayNumber, toDayNumber } from '../kernel/dates.ts';
import { InputError } from '../kernel/input.ts';
import { plantBy, type PlantByInput } from './plant-by.ts';
import type { PotLifeRule } from './rules.ts';
import { windowsFor } from './windows.ts';

const oneYear: PotLifeRule = { id: 'one-year', basis: 'confined', span: 'P1Y', reach: { genus: 'Asclepias' } };
const carrying: PotLifeRule = { ...oneYear, id: 'carrying', winterCarry: { maxDays: 60, graceDays: 14 } };
const inPlugTray: PotLifeRule = {
  id: 'plug-tray',
  basis: 'container',
  span: 'P170D',
  reach: { rootHabit: 'fibrous', containerId: 'tray' },
};
const noWinter: PotLifeRule = { id: 'no-winter', basis: 'no-winter', span: null, reach: { plantId: 'plant' } };
const windows = [
  { id: 'spring', opensMd: '04-15', closesMd: '06-15' },
  { id: 'autumn', opensMd: '09-01', closesMd: '10-15' },
];
const dormantMonths = [10, 11, 12, 1, 2, 3];
const potted = (on: string) => ({ confinedOn: on, containerOn: on });

describe('plant by', () => {
  it('names the rule, the limit and the window that make the day', () => {
    expect(plantBy({ ...potted('2026-04-14'), rules: [oneYear], windows })).toEqual({
      state: 'window',
      plantByOn: '2026-10-15',
      limitOn: '2027-04-14',
      ruleId: 'one-year',
      basis: 'confined',
      window: { id: 'autumn', opensOn: '2026-09-01', closesOn: '2026-10-15' },
      nextOpensOn: '2027-04-15',
    });
  });

  it('allows the limit day itself', () => {
    const result = plantBy({ ...potted('2026-04-15'), rules: [oneYear], windows });
    expect(result.plantByOn).toBe('2027-04-15');
  });

  it('is the limit when no windows are set', () => {
    const result = plantBy({ ...potted('2026-04-14'), rules: [oneYear], windows: [] });
    expect(result).toMatchObject({ state: 'limit-only', plantByOn: '2027-04-14', window: null, nextOpensOn: null });
  });

  it('has no window when the last one closed before the plants were ready', () => {
    const result = plantBy({ ...potted('2026-09-01'), readyOn: '2026-10-16', rules: [inPlugTray], windows });
    expect(result).toMatchObject({
      state: 'no-window',
      plantByOn: '2027-02-18',
      window: null,
      nextOpensOn: '2027-04-15',
    });
  });

  it('may be the very day on which the plants are ready', () => {
    const result = plantBy({ ...potted('2026-09-01'), readyOn: '2026-10-15', rules: [inPlugTray], windows });
    expect(result).toMatchObject({ state: 'window', plantByOn: '2026-10-15' });
  });

  it('of plants in no known container is not before their roots were confined', () => {
    const half: PotLifeRule = { ...oneYear, span: 'P170D' };
    expect(plantBy({ confinedOn: '2026-10-20', rules: [half], windows })).toMatchObject({
      state: 'no-window',
      plantByOn: '2027-04-08',
    });
  });

  it('has no window when windows leave no day in common', () => {
    const north = { id: 'north', opensMd: '07-01', closesMd: '07-31', region: 'north' };
    const result = plantBy({
      ...potted('2026-04-14'),
      rules: [oneYear],
      windows: [...windows, north],
      region: 'north',
    });
    expect(result).toMatchObject({ state: 'no-window', plantByOn: '2027-04-14', nextOpensOn: null });
  });

  it('is the earliest of several rules’ days', () => {
    const result = plantBy({
      confinedOn: '2026-04-14',
      containerOn: '2026-04-20',
      rules: [oneYear, inPlugTray],
      windows,
    });
    expect(result).toMatchObject({
      ruleId: 'plug-tray',
      basis: 'container',
      limitOn: '2026-10-07',
      plantByOn: '2026-10-07',
    });
  });

  it('counts the most particular rule of a basis, though a wider one is stricter', () => {
    const ofPlant: PotLifeRule = { id: 'two-years', basis: 'confined', span: 'P2Y', reach: { plantId: 'plant' } };
    expect(plantBy({ ...potted('2026-04-14'), rules: [oneYear, ofPlant], windows }).plantByOn).toBe('2027-10-15');
  });

  it('does not bind plants whose roots are not confined', () => {
    const result = plantBy({ confinedOn: null, containerOn: '2026-04-14', rules: [oneYear], windows });
    expect(result).toMatchObject({ state: 'unlimited', plantByOn: null, limitOn: null, ruleId: null });
  });

  it('does not bind plants in the ground', () => {
    expect(plantBy({ rules: [oneYear, inPlugTray, noWinter], windows, freezeMd: '11-01' }).state).toBe('unlimited');
  });

  it('refuses days that do not exist and rules that cannot be applied', () => {
    expect(() => plantBy({ ...potted('2026-02-29'), rules: [], windows })).toThrow(/^confinedOn: /);
    expect(() => plantBy({ ...potted('2026-04-14'), readyOn: 'soon', rules: [], windows })).toThrow(/^readyOn: /);
    expect(() => plantBy({ ...potted('2026-04-14'), rules: [{ ...oneYear, span: 'a year' }], windows })).toThrow(
      /^span: /,
    );
    expect(() =>
      plantBy({ ...potted('2026-04-14'), rules: [oneYear], windows: [{ id: 'x', opensMd: '4-1', closesMd: '05-01' }] }),
    ).toThrow(InputError);
  });
});

describe('no winter', () => {
  it('ends with the first freeze day', () => {
    const result = plantBy({ containerOn: '2026-05-20', rules: [noWinter], windows, freezeMd: '11-01' });
    expect(result).toMatchObject({ limitOn: '2026-11-01', plantByOn: '2026-10-15', basis: 'no-winter' });
  });

  it('on the freeze day ends that day, the day after it a year later', () => {
    const limit = (containerOn: string) =>
      plantBy({ containerOn, rules: [noWinter], windows, freezeMd: '11-01' }).limitOn;
    expect(limit('2026-11-01')).toBe('2026-11-01');
    expect(limit('2026-11-02')).toBe('2027-11-01');
  });

  it('does not bind where the cold cannot reach', () => {
    const result = plantBy({
      containerOn: '2026-05-20',
      rules: [noWinter],
      windows,
      freezeMd: '11-01',
      coldSheltered: true,
    });
    expect(result.state).toBe('unlimited');
  });

  it('needs the freeze day', () => {
    expect(() => plantBy({ containerOn: '2026-05-20', rules: [noWinter], windows })).toThrow(/^freezeMd: /);
  });
});

describe('winter carry', () => {
  const carry = (confinedOn: string, more: Partial<PlantByInput> = {}) =>
    plantBy({ confinedOn, containerOn: confinedOn, rules: [carrying], windows, dormantMonths, ...more });

  it('goes to the next opening and its grace, and keeps the limit in sight', () => {
    expect(carry('2026-03-20')).toEqual({
      state: 'winter-carry',
      plantByOn: '2027-04-29',
      limitOn: '2027-03-20',
      carriedFromOn: '2027-03-20',
      ruleId: 'carrying',
      basis: 'confined',
      window: { id: 'spring', opensOn: '2027-04-15', closesOn: '2027-06-15' },
      nextOpensOn: '2027-04-15',
    });
  });

  it('is refused one day too far from the opening', () => {
    expect(carry('2026-02-14').plantByOn).toBe('2027-04-29');
    expect(carry('2026-02-13')).toMatchObject({ state: 'window', plantByOn: '2026-10-15' });
  });

  it('is refused to plants that are awake', () => {
    expect(carry('2026-04-01')).toMatchObject({ state: 'window', plantByOn: '2026-10-15' });
    expect(carry('2026-03-20', { dormantMonths: [] }).state).toBe('window');
  });

  it('is not needed when the limit lies in a window', () => {
    const late = [...windows, { id: 'dormant', opensMd: '11-01', closesMd: '03-31' }];
    expect(carry('2026-03-20', { windows: late })).toMatchObject({ state: 'window', plantByOn: '2027-03-20' });
  });

  it('does not help plants that were not ready while their limit’s own window was open', () => {
    const late = [...windows, { id: 'dormant', opensMd: '11-01', closesMd: '03-31' }];
    expect(carry('2026-03-20', { windows: late, readyOn: '2027-04-01' })).toMatchObject({
      state: 'no-window',
      plantByOn: '2027-03-20',
    });
  });

  it('does not go past the close of the window it is carried to', () => {
    const short = [{ id: 'short', opensMd: '04-15', closesMd: '04-20' }];
    expect(carry('2026-03-20', { windows: short }).plantByOn).toBe('2027-04-20');
  });

  it('gives way to a second rule that allows none', () => {
    const pot: PotLifeRule = { ...inPlugTray, span: 'P1Y' };
    const result = carry('2026-03-20', { rules: [carrying, pot], containerOn: '2026-03-25' });
    expect(result).toMatchObject({
      state: 'window',
      plantByOn: '2026-10-15',
      ruleId: 'plug-tray',
      limitOn: '2027-03-25',
    });
  });

  it('is still a carry when a second rule ends inside the window', () => {
    const pot: PotLifeRule = { ...inPlugTray, span: 'P1Y' };
    const result = carry('2026-03-20', { rules: [carrying, pot], containerOn: '2026-04-20' });
    expect(result).toMatchObject({
      state: 'winter-carry',
      plantByOn: '2027-04-20',
      ruleId: 'plug-tray',
      carriedFromOn: '2027-03-20',
    });
  });

  it('can give the earlier plant the later day', () => {
    expect(carry('2026-03-31').plantByOn).toBe('2027-04-29');
    expect(carry('2026-04-01').plantByOn).toBe('2026-10-15');
  });
});

const day = fc.integer({ min: toDayNumber('2023-01-01'), max: toDayNumber('2029-12-31') }).map(fromDayNumber);
const monthDay = fc.integer({ min: 0, max: 365 }).map((n) => fromDayNumber(toDayNumber('2000-01-01') + n).slice(5));
const lot = fc.record({
  confinedOn: fc.option(day),
  containerOn: day,
  readyOn: fc.option(day),
  rules: fc.subarray([carrying, inPlugTray, noWinter]),
  windows: fc.array(fc.record({ id: fc.constantFrom('a', 'b', 'c'), opensMd: monthDay, closesMd: monthDay }), {
    maxLength: 3,
  }),
  freezeMd: monthDay,
});
const later = (a: string | null, b: string | null) => a === null || (b !== null && b <= a);

describe('for any plants, the plant-by day', () => {
  it('is never after any limit unless carried over winter', () => {
    fc.assert(
      fc.property(lot, fc.boolean(), (input, mayCarry) => {
        const result = plantBy({ ...input, dormantMonths: mayCarry ? dormantMonths : [] });
        if (result.state === 'unlimited') return result.plantByOn === null;
        const early = (result.plantByOn ?? '') <= (result.limitOn ?? '');
        return result.state === 'winter-carry' ? (result.plantByOn ?? '') > (result.carriedFromOn ?? '') : early;
      }),
    );
  });

  it('lies in an open window no earlier than the plants are ready, whenever a window is named', () => {
    fc.assert(
      fc.property(lot, (input) => {
        const { window, plantByOn } = plantBy({ ...input, dormantMonths });
        if (window === null || plantByOn === null) return true;
        const readyOn = input.readyOn ?? input.containerOn;
        return (
          window.opensOn <= plantByOn &&
          plantByOn <= window.closesOn &&
          plantByOn >= readyOn &&
          plantByOn >= input.containerOn
        );
      }),
    );
  });

  it('with a day left open between ready and limit is never called no window', () => {
    fc.assert(
      fc.property(lot, day, (input, on) => {
        const result = plantBy(input);
        const from = [input.containerOn, input.readyOn ?? input.containerOn].sort()[1] ?? '';
        const open = windowsFor(input.windows, {}).ranges.some(({ opensMd, closesMd }) => {
          const md = on.slice(5);
          return opensMd <= closesMd ? md >= opensMd && md <= closesMd : md >= opensMd || md <= closesMd;
        });
        return !(result.state === 'no-window' && open && on >= from && on <= (result.limitOn ?? ''));
      }),
    );
  });

  it('without winter carry never moves later when plants were confined earlier', () => {
    fc.assert(
      fc.property(lot, day, fc.integer({ min: 0, max: 400 }), (input, confinedOn, earlier) => {
        const before = plantBy({ ...input, confinedOn: addDays(confinedOn, -earlier) });
        return later(plantBy({ ...input, confinedOn }).plantByOn, before.plantByOn);
      }),
    );
  });

  it('without winter carry never moves later when plants were potted earlier', () => {
    fc.assert(
      fc.property(lot, fc.integer({ min: 0, max: 400 }), (input, earlier) => {
        const before = plantBy({ ...input, containerOn: addDays(input.containerOn, -earlier) });
        return later(plantBy(input).plantByOn, before.plantByOn);
      }),
    );
  });
});
