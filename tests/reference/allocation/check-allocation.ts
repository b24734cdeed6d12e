// `npm run campaign -- allocation --seed N --cases M`: allocation against HiGHS on fresh instances.
import { allocate } from '@rootclock/domain';
import { FreshHighs } from '@rootclock/server/features/planning/plan/solver/fresh-highs';
import { compare } from '../../support/allocation/compare.ts';
import { drawInstance, LARGE, shuffled, SMALL, TINY } from '../../support/allocation/draw-instance.ts';
import { firstAnswer } from '../../support/allocation/first-answer.ts';

/** Of ten instances so many are of each shape. */
const SHAPES = [TINY, TINY, TINY, SMALL, SMALL, SMALL, SMALL, SMALL, SMALL, LARGE];

/** Answers how many of so many instances came out wrong; what is wrong with each is said on standard error. */
export async function checkAllocation(seed: number, cases: number): Promise<number> {
  const fresh = new FreshHighs();
  let mismatches = 0;
  for (let number = 0; number < cases; number += 1) {
    const shape = SHAPES[number % SHAPES.length] ?? SMALL;
    const instance = drawInstance(seed, number, shape);
    const answer = allocate(instance);
    const same = (other: unknown, own: unknown) => JSON.stringify(other) === JSON.stringify(own);
    const wrong = [
      ...(await fresh.use((highs) => compare(highs, instance, answer).wrong)),
      ...(shape !== TINY || same(firstAnswer(instance).assignments, answer.assignments)
        ? []
        : ['it is not the first of the best answers']),
      ...(same(allocate(shuffled(instance, number)), answer)
        ? []
        : ['it differs when the rows stand in another order']),
    ];
    if (wrong.length === 0) continue;
    mismatches += 1;
    console.error(JSON.stringify({ seed, number, wrong, instance, answer }));
  }
  return mismatches;
}
