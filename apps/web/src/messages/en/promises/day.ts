import { days } from '../words.ts';

/** Moving an order to another day, tried before it is done. */
export const day = {
  title: 'Move to another day',
  newDay: 'New day',
  now: (on: string) => `Now ${days.long(on)}.`,
  keeps: 'The order keeps its turn.',
  goesLast: 'The order goes behind all others, so that nobody else becomes shorter.',
  move: (on: string) => `Move to ${days.long(on)}`,
  moved: (on: string) => `Moved to ${days.long(on)}.`,
};
