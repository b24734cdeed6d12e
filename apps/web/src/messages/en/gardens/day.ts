import { days } from '../words.ts';

/** Moving an order to another day, tried before it is done. */
export const day = {
  title: 'Move to another day',
  newDay: 'New day',
  now: (on: string) => `Now ${days.long(on)}.`,
  whatIf: (on: string) => `Moving to ${days.long(on)}:`,
  nothingChanges: 'Every line keeps what it has.',
  others: 'Other orders',
  shorter: (plant: string, container: string, now: number, then: number, by: number, of: number) => `${plant} in ${container} becomes short by ${by}: ${now} of ${of} now, then ${then}.`,
  fuller: (plant: string, container: string, now: number, then: number, of: number) => `${plant} in ${container} gains: ${now} of ${of} now, then ${then}.`,
  same: (plant: string, container: string, filled: number, of: number) => `${plant} in ${container} keeps ${filled} of ${of}.`,
  otherLine: (order: string, client: string, sentence: string) => `${order}, ${client}: ${sentence}`,
  keeps: 'The order keeps its turn.',
  goesLast: 'The order goes behind all others, so that nobody else becomes shorter.',
  move: (on: string) => `Move to ${days.long(on)}`,
  moved: (on: string) => `Moved to ${days.long(on)}.`,
};
