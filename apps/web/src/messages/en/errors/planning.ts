import type { ErrorSentences } from '../../errors.ts';

export const planning = {
  'task-ends-by-entry': ({ of }) => `This is not ticked off: it is over when it is booked on ${of}. Open it and enter what was done.`,
} satisfies Partial<ErrorSentences>;
