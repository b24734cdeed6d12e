import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unitsToStart } from '../../propagation/seed/units-to-start.ts';
import { known } from '../sample-facts.ts';
import { chanceOf, countedIn, plantsFrom, successOf } from './amounts.ts';

const shape = fc.double({ min: 0.05, max: 300, noNaN: true });
const success = fc.oneof(fc.double({ min: 0.01, max: 0.999, noNaN: true }), fc.record({ alpha: shape, beta: shape }));
const confidence = fc.double({ min: 0.5, max: 0.999, noNaN: true });

describe('the plants that units give', () => {
  it('are the most that are there at the confidence', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3000 }), success, confidence, (started, share, sure) => {
        const plants = plantsFrom(started, share, sure);
        if (plants > 0) expect(chanceOf(plants, started, share)).toBeGreaterThanOrEqual(sure);
        if (plants < started) expect(chanceOf(plants + 1, started, share)).toBeLessThan(sure);
      }),
      { seed: 81, numRuns: 600 },
    );
  });
  it('are never fewer than were wanted when the units were reckoned', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.double({ min: 0.2, max: 0.99, noNaN: true }),
        confidence,
        (wanted, share, sure) => {
          expect(
            plantsFrom(unitsToStart({ wanted, success: share, confidence: sure }) ?? 0, share, sure * (1 - 1e-9)),
          ).toBeGreaterThanOrEqual(wanted);
        },
      ),
      { seed: 82, numRuns: 300 },
    );
  });
});

describe('the share of a batch that gets ready', () => {
  it('is the product where all shares are known', () =>
    expect(
      successOf(
        known([
          { kind: 'emergence', share: 0.8 },
          { kind: 'growing-on', share: 0.9 },
        ]),
      ),
    ).toBeCloseTo(0.72, 12));
  it('is nothing where a stage lets nothing pass', () =>
    expect(
      successOf(
        known([
          { kind: 'emergence', share: 0 },
          { kind: 'growing-on', share: 0.9 },
        ]),
      ),
    ).toBe(0));
});

describe('what a batch is reckoned in', () => {
  it.each([
    ['cell', 'tray', 50, 'cells'],
    ['cell', 'pot', null, 'cells'],
    ['piece', 'tray', 50, 'pieces'],
    ['pack', 'tray', 50, 'cells'],
    ['pack', 'flat', null, 'seeds'],
    ['tray', 'tray', 50, 'cells'],
    ['tray', 'flat', null, 'seeds'],
  ] as const)('%s in a %s of %s are %s', (startUnit, kind, cells, counted) =>
    expect(countedIn({ startUnit }, { kind, cells })).toBe(counted),
  );
  it('are seeds where packs are sown into nothing known', () =>
    expect(countedIn({ startUnit: 'pack' }, null)).toBe('seeds'));
});
