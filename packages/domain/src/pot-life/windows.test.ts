import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type CalendarDate, fromDayNumber, toDayNumber } from '../kernel/dates.ts';
import { InputError } from '../kernel/input.ts';
import { type DayRange, lastOpenDay, nextOpening, openingIn, type PlantingWindow, windowsFor } from './windows.ts';

const spring: PlantingWindow = { id: 'spring', opensMd: '04-15', closesMd: '06-15' };
const autumn: PlantingWindow = { id: 'autumn', opensMd: '09-01', closesMd: '10-15' };
const plugAutumn: PlantingWindow = { id: 'plug-autumn', opensMd: '08-15', closesMd: '09-15', maxContainerMl: 200 };
const anywhere = { containerMl: 1000, region: 'north' };

describe('windows', () => {
  it('of one kind add up', () => {
    expect(windowsFor([autumn, spring], anywhere)).toEqual({ configured: true, ranges: [spring, autumn] });
  });

  it('for small containers cut those for all', () => {
    expect(windowsFor([spring, autumn, plugAutumn], { containerMl: 150 }).ranges).toEqual([
      { id: 'plug-autumn', opensMd: '09-01', closesMd: '09-15' },
    ]);
  });

  it('for small containers reach up to their volume and no further', () => {
    expect(windowsFor([spring, plugAutumn], { containerMl: 200 }).ranges).toEqual([]);
    expect(windowsFor([spring, plugAutumn], { containerMl: 201 }).ranges).toEqual([spring]);
    expect(windowsFor([spring, plugAutumn], {}).ranges).toEqual([spring]);
  });

  it('of a region cut those for all, at its sites only', () => {
    const north = { id: 'north', opensMd: '05-01', closesMd: '09-20', region: 'north' };
    expect(windowsFor([spring, autumn, north], { region: 'north' }).ranges).toEqual([
      { id: 'north', opensMd: '05-01', closesMd: '06-15' },
      { id: 'north', opensMd: '09-01', closesMd: '09-20' },
    ]);
    expect(windowsFor([spring, autumn, north], { region: 'south' }).ranges).toEqual([spring, autumn]);
  });

  it('that do not apply leave everything open', () => {
    expect(windowsFor([], anywhere)).toEqual({ configured: false, ranges: [] });
    expect(windowsFor([plugAutumn], anywhere)).toEqual({ configured: false, ranges: [] });
  });

  it('with no day in common leave nothing open', () => {
    const north = { id: 'north', opensMd: '07-01', closesMd: '07-31', region: 'north' };
    expect(windowsFor([spring, north], anywhere)).toEqual({ configured: true, ranges: [] });
  });

  it('over the year’s end stay one stretch when cut', () => {
    const dormant = { id: 'dormant', opensMd: '10-01', closesMd: '03-31' };
    const north = { id: 'north', opensMd: '11-01', closesMd: '02-10', region: 'north' };
    expect(windowsFor([dormant, north], anywhere).ranges).toEqual([
      { id: 'north', opensMd: '11-01', closesMd: '02-10' },
    ]);
  });

  it('over the year’s end open in one year and close in the next', () => {
    const dormant = { id: 'dormant', opensMd: '10-01', closesMd: '03-31' };
    expect(openingIn(2026, dormant)).toEqual({ id: 'dormant', opensOn: '2026-10-01', closesOn: '2027-03-31' });
    expect(lastOpenDay([dormant], '2027-01-20')?.on).toBe('2027-01-20');
    expect(lastOpenDay([dormant], '2027-07-01')?.on).toBe('2027-03-31');
    expect(nextOpening([dormant], '2027-01-20')?.opensOn).toBe('2027-10-01');
  });

  it('open next in the year after when this year’s opening is over', () => {
    expect(nextOpening([spring], '2027-04-14')?.opensOn).toBe('2027-04-15');
    expect(nextOpening([spring], '2027-04-15')?.opensOn).toBe('2028-04-15');
    expect(nextOpening([], '2027-04-15')).toBeNull();
  });

  it('that close on the leap day close on 28 February in a common year', () => {
    const winter = { id: 'winter', opensMd: '01-10', closesMd: '02-29' };
    expect(lastOpenDay([winter], '2027-03-05')?.on).toBe('2027-02-28');
    expect(lastOpenDay([winter], '2028-03-05')?.on).toBe('2028-02-29');
  });

  it('refuse a day that does not exist and a container of nothing', () => {
    expect(() => windowsFor([{ ...spring, closesMd: '06-31' }], anywhere)).toThrow(InputError);
    expect(() => windowsFor([{ ...spring, maxContainerMl: 0 }], anywhere)).toThrow(/^maxContainerMl: /);
  });

  it('do not depend on the order of reading', () => {
    const north = { id: 'north', opensMd: '05-01', closesMd: '09-20', region: 'north' };
    const all = [spring, autumn, plugAutumn, north];
    fc.assert(
      fc.property(fc.shuffledSubarray(all, { minLength: 4 }), (windows) => {
        expect(windowsFor(windows, { containerMl: 100, region: 'north' })).toEqual(
          windowsFor(all, { containerMl: 100, region: 'north' }),
        );
      }),
    );
  });
});

// Walks the calendar day by day, which no clever cut can get wrong. The leap day is left out of the generated edges: a window
// that ends on it moves by a day in common years, which has its own test above.
const monthDay = fc.integer({ min: 0, max: 364 }).map((n) => fromDayNumber(toDayNumber('2001-01-01') + n).slice(5));
const someWindows = fc.array(
  fc.record({
    id: fc.constantFrom('a', 'b', 'c', 'd', 'e'),
    opensMd: monthDay,
    closesMd: monthDay,
    maxContainerMl: fc.constantFrom(null, 100, 500),
    region: fc.constantFrom(null, 'north', 'south'),
  }),
  { maxLength: 5 },
);
const openOn = (window: DayRange, on: CalendarDate) => {
  const md = on.slice(5);
  return window.opensMd <= window.closesMd
    ? md >= window.opensMd && md <= window.closesMd
    : md >= window.opensMd || md <= window.closesMd;
};

describe('cutting windows', () => {
  it('leaves exactly the days that every kind leaves open', () => {
    fc.assert(
      fc.property(someWindows, fc.integer({ min: 0, max: 1460 }), (windows, offset) => {
        const on = addDays('2026-01-01', offset);
        const applying = windows.filter(
          (w) => (w.maxContainerMl === null || w.maxContainerMl >= 300) && w.region !== 'south',
        );
        const kinds = new Set(applying.map((w) => `${w.maxContainerMl} ${w.region}`));
        const expected = [...kinds].every((kind) =>
          applying.some((w) => `${w.maxContainerMl} ${w.region}` === kind && openOn(w, on)),
        );
        const { configured, ranges } = windowsFor(windows, { containerMl: 300, region: 'north' });
        expect(configured).toBe(kinds.size > 0);
        if (configured) expect(ranges.some((range) => openOn(range, on))).toBe(expected);
      }),
    );
  });

  it('finds the last open day as a walk back through the calendar does', () => {
    fc.assert(
      fc.property(someWindows, fc.integer({ min: 0, max: 1460 }), (windows, offset) => {
        const on = addDays('2026-01-01', offset);
        const { ranges } = windowsFor(windows, { containerMl: 300, region: 'north' });
        let walked: CalendarDate | null = null;
        for (let back = 0; back <= 366 && walked === null; back += 1) {
          const day = addDays(on, -back);
          if (ranges.some((range) => openOn(range, day))) walked = day;
        }
        expect(lastOpenDay(ranges, on)?.on ?? null).toBe(walked);
      }),
    );
  });
});
