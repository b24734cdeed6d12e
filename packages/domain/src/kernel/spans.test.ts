import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, fromDayNumber, toDayNumber } from './dates.ts';
import { InputError } from './input.ts';
import { addSpan, isSpan, subtractSpan } from './spans.ts';

const day = fc.integer({ min: toDayNumber('1900-01-01'), max: toDayNumber('2200-12-31') }).map(fromDayNumber);

describe('spans', () => {
  it.each([
    ['2026-04-14', 'P1Y', '2027-04-14'],
    ['2024-02-29', 'P1Y', '2025-02-28'],
    ['2024-02-29', 'P4Y', '2028-02-29'],
    ['2024-02-28', 'P1Y', '2025-02-28'],
    ['2026-01-31', 'P1M', '2026-02-28'],
    ['2026-12-31', 'P2M', '2027-02-28'],
    ['2026-04-14', 'P170D', '2026-10-01'],
    ['2026-04-14', 'P24W', '2026-09-29'],
    ['2026-01-31', 'P1M1W1D', '2026-03-08'],
    ['2024-02-29', 'P1Y6M', '2025-08-29'],
  ])('%s and %s make %s', (on, span, expected) => {
    expect(addSpan(on, span)).toBe(expected);
  });

  it('count back from a day', () => {
    expect(subtractSpan('2026-03-31', 'P1M')).toBe('2026-02-28');
    expect(subtractSpan('2026-06-20', 'P10W')).toBe('2026-04-11');
    expect(subtractSpan('2026-01-15', 'P1Y1M')).toBe('2024-12-15');
  });

  it.each(['P', 'P0D', 'P0Y0M', '1Y', 'P1H', 'PT24H', 'P1.5Y', 'P-1D', 'P1D1Y', 'p1y', '', null])(
    'refuse %j',
    (span) => {
      expect(isSpan(span)).toBe(false);
      expect(() => addSpan('2026-01-01', String(span))).toThrow(InputError);
    },
  );

  it('accept exactly what can be added', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^P[0-9YMWD]{0,6}$/), (span) => {
        let added = true;
        try {
          addSpan('2026-01-01', span);
        } catch {
          added = false;
        }
        return added === isSpan(span);
      }),
    );
  });

  it('keep the order of days', () => {
    fc.assert(
      fc.property(day, day, fc.integer({ min: 1, max: 60 }), (a, b, months) => {
        const [early, late] = a <= b ? [a, b] : [b, a];
        return addSpan(early, `P${months}M`) <= addSpan(late, `P${months}M`);
      }),
    );
  });

  it('in days equal plain counting', () => {
    fc.assert(fc.property(day, fc.integer({ min: 1, max: 5000 }), (on, n) => addSpan(on, `P${n}D`) === addDays(on, n)));
  });
});
