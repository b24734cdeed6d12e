import { uuidOf } from '../derived-id.ts';

/** Numbers that look like chance and are the same each time: the demo nursery must not differ between two first starts. */
export interface Chance {
  /** From 0 up to, not including, 1. */
  share(): number;
  whole(least: number, most: number): number;
  pick<T>(choices: readonly T[]): T;
  id(): string;
}

/** The choice at an index taken round the end; a list without choices is a slip in the scenario. */
export function anyOf<T>(choices: readonly T[], index: number): T {
  const choice = choices[index % choices.length];
  if (choice === undefined) throw new Error('the demo picks from an empty list');
  return choice;
}

/** A 32-bit mixing generator (the published "mulberry32" recurrence): good enough for a scenario, not for secrets. */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (mixed ^ (mixed >>> 14)) >>> 0;
  };
  const share = () => next() / 2 ** 32;
  const whole = (least: number, most: number) => least + Math.floor(share() * (most - least + 1));
  return {
    share,
    whole,
    pick: (choices) => anyOf(choices, whole(0, choices.length - 1)),
    id: () => uuidOf(Array.from({ length: 4 }, () => next().toString(16).padStart(8, '0')).join(''), 4),
  };
}
