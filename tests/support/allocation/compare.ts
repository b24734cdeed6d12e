// Where an answer differs from what the goals in sequence reach.
import { allocate, type AllocationAnswer, type AllocationInstance } from '@rootclock/domain';
import type { Highs } from 'highs';
import { solveGoals } from './goal-sequence.ts';
import { breaksOf, goalsOf } from './goals.ts';

export interface Comparison {
  /** What is wrong with the answer, in the order of the goals; none when it is as good as it can be. */
  wrong: string[];
  solves: number;
}

export function compare(
  highs: Highs,
  instance: AllocationInstance,
  { assignments, totals }: AllocationAnswer = allocate(instance),
): Comparison {
  const own = goalsOf(instance, assignments);
  const { goals, solves } = solveGoals(highs, instance);
  const filled = own.filled.reduce((sum, units) => sum + units, 0);
  const expected = { filled, penalty: own.penalty, savedValue: own.savedValue, moved: own.moved };
  const goal = (name: keyof typeof goals) =>
    String(own[name]) === String(goals[name]) ? [] : [`${name} is ${own[name]}, and could be ${goals[name]}`];
  return {
    wrong: [
      ...breaksOf(instance, assignments),
      ...goal('filled'),
      ...goal('penalty'),
      ...goal('savedValue'),
      ...goal('days'),
      ...goal('moved'),
      ...(['filled', 'penalty', 'savedValue', 'moved'] as const)
        .filter((name) => totals[name] !== expected[name])
        .map((name) => `the total ${name} is ${totals[name]}, but its assignments come to ${expected[name]}`),
    ],
    solves,
  };
}
