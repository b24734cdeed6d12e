// `npm run -s check:allocation -- --seed N --cases M`: allocation against HiGHS on fresh instances. Standard output holds the count, standard error what differs.
import { parseArgs } from 'node:util';
import { allocate } from '@rootclock/domain';
import { FreshHighs } from '@rootclock/server/features/planning/plan/solver/fresh-highs';
import { compare } from '../../support/allocation/compare.ts';
import { drawInstance, LARGE, shuffled, SMALL, TINY } from '../../support/allocation/draw-instance.ts';
import { firstAnswer } from '../../support/allocation/first-answer.ts';

/** Of ten instances so many are of each shape. */
const SHAPES = [TINY, TINY, TINY, SMALL, SMALL, SMALL, SMALL, SMALL, SMALL, LARGE];

const { values } = parseArgs({
  options: { seed: { type: 'string', default: '1' }, cases: { type: 'string', default: '2000' } },
});
const whole = (name: 'seed' | 'cases', least: number): number => {
  const given = Number(values[name]);
  if (values[name] === '' || !Number.isSafeInteger(given) || given < least)
    throw new Error(`--${name} must be a whole number from ${least} on, not ${values[name]}`);
  return given;
};

async function run(seed: number, cases: number): Promise<number> {
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

try {
  const [seed, cases] = [whole('seed', 0), whole('cases', 1)];
  const mismatches = await run(seed, cases);
  console.log(JSON.stringify({ cases, mismatches }));
  if (mismatches > 0) process.exitCode = 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 2;
}
