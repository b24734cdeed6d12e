import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromDayNumber } from '../../kernel/dates.ts';
import { InputError } from '../../kernel/input.ts';
import { type Clocks, clocksAfter } from './clocks-after.ts';

const clocks: Clocks = { confinedOn: '2026-04-20', containerOn: '2026-06-01', assumed: false };
const older: Clocks = { confinedOn: '2026-03-01', containerOn: '2026-07-15', assumed: true };
const on = '2026-08-10';

describe('clocks after', () => {
  it('the first potting start the container', () => {
    expect(clocksAfter({ kind: 'pot', confinedOn: '2026-04-20', assumed: false, on })).toEqual({
      ...clocks,
      containerOn: on,
    });
  });

  it.each(['pot-up', 'repot', 'root-prune'] as const)(
    '%s keep the confined day and start the container anew',
    (kind) => {
      expect(clocksAfter({ kind, clocks, on })).toEqual({ ...clocks, containerOn: on });
    },
  );

  it.each(['move', 'return', 'split'] as const)('%s go on', (kind) => {
    expect(clocksAfter({ kind, clocks })).toEqual(clocks);
  });

  it('a merge take the earliest of each, and a guess stays a guess', () => {
    expect(clocksAfter({ kind: 'merge', clocks: [clocks, older] })).toEqual({
      confinedOn: '2026-03-01',
      containerOn: '2026-06-01',
      assumed: true,
    });
  });

  it('a merge with plants that are not confined keep the day of those that are', () => {
    expect(clocksAfter({ kind: 'merge', clocks: [{ ...clocks, confinedOn: null }, clocks] }).confinedOn).toBe(
      '2026-04-20',
    );
  });

  it('clumping keep the oldest roots in a new pot', () => {
    expect(clocksAfter({ kind: 'clump', clocks: [clocks, older], on })).toEqual({
      confinedOn: '2026-03-01',
      containerOn: on,
      assumed: true,
    });
  });

  it.each(['divide', 'lift'] as const)('%s start anew', (kind) => {
    expect(clocksAfter({ kind, on })).toEqual({ confinedOn: on, containerOn: on, assumed: false });
  });

  it('planting in the ground end', () => {
    expect(clocksAfter({ kind: 'plant-in-ground' })).toEqual({ confinedOn: null, containerOn: null, assumed: false });
  });

  it('a merge do not depend on the order of lots', () => {
    const day = fc.option(fc.integer({ min: 20_000, max: 21_000 }).map(fromDayNumber));
    const lots = fc.array(fc.record({ confinedOn: day, containerOn: day, assumed: fc.boolean() }), { minLength: 1 });
    fc.assert(
      fc.property(lots, (merged) => {
        expect(clocksAfter({ kind: 'merge', clocks: [...merged].reverse() })).toEqual(
          clocksAfter({ kind: 'merge', clocks: merged }),
        );
      }),
    );
  });

  it('a merge of nothing and a day that does not exist are refused', () => {
    expect(() => clocksAfter({ kind: 'merge', clocks: [] })).toThrow(InputError);
    expect(() => clocksAfter({ kind: 'lift', on: '2026-02-29' })).toThrow(/^on: /);
  });
});
