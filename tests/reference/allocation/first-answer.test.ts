// Of answers that are equally good one is the first; found here by looking through all answers there are.
import { allocate, type AllocationAnswer } from '@rootclock/domain';
import { describe, expect, it } from 'vitest';
import { drawInstance, LARGE, SMALL, shuffled, TINY } from '../../support/allocation/draw-instance.ts';
import { firstAnswer } from '../../support/allocation/first-answer.ts';

const SEED = 20_261_130;
const COUNT = 1000;

describe('of all whole answers', () => {
  it('allocation gives the best, and of the best the one with most on the first pair, then on the second, and so on', () => {
    let looked = 0;
    const differing = Array.from({ length: COUNT }, (_, number) => number).filter((number) => {
      const instance = drawInstance(SEED, number, TINY);
      const first = firstAnswer(instance);
      looked += first.looked;
      return JSON.stringify(first.assignments) !== JSON.stringify(allocate(instance).assignments);
    });
    expect(differing).toEqual([]);
    // Instances with hardly a choice would show nothing.
    expect(looked).toBeGreaterThan(10 * COUNT);
  }, 120_000);
});

describe('the order of supply, demand, accepted items, refusals and holdings', () => {
  it.each([
    ['up to 6 lots and 6 lines', SMALL, 1000],
    ['up to 24 lots and 24 lines', LARGE, 150],
  ] as const)(
    'changes nothing in the answer to instances of %s',
    (_, shape, count) => {
      const changed = Array.from({ length: count }, (__, number) => number).filter((number) => {
        const instance = drawInstance(SEED, number, shape);
        const answer: AllocationAnswer = allocate(instance);
        return [1, 2].some((seed) => JSON.stringify(allocate(shuffled(instance, seed))) !== JSON.stringify(answer));
      });
      expect(changed).toEqual([]);
    },
    120_000,
  );
});
