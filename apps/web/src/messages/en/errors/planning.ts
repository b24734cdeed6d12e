import { days } from '../words.ts';
import type { ErrorSentences } from '../../errors.ts';

export const planning = {
  'task-ends-by-entry': ({ of }) =>
    `This is not ticked off: it is over when it is booked on ${of}. Open it and enter what was done.`,
  'wanted-day-past': ({ today }) => `Choose a season that is not over yet, or a day from ${days.long(today)} on.`,
  'demand-withdrawn': () => 'This was withdrawn before. Enter it anew if it is wanted after all.',
  'plan-takes-too-long': ({ seconds }) =>
    `The plan was not ready within ${seconds} seconds. Nothing is lost: ask for it again in a moment.`,
} satisfies Partial<ErrorSentences>;
