/** What a nursery's tasks are, in the order in which those of one day and place are done. */
export const TASK_KINDS = [
  'pull',
  'plant-out',
  'hand-over',
  'stage-late',
  'ask-not-yet-up',
  'take-out-of-cold',
  'sow',
  'stick',
  'count',
  'prick-out',
  'pot',
  'harden',
  'check-root-ball',
  'leave-the-pot',
  'cover',
  'vole-bait',
  'uncover',
  'follow-up',
  'test-to-repeat',
] as const;
export type TaskKind = (typeof TASK_KINDS)[number];

/** What a task is about. Where it is done follows from it. */
export const TASK_SUBJECTS = ['batch', 'lot', 'place', 'order', 'source'] as const;
export type TaskSubjectKind = (typeof TASK_SUBJECTS)[number];

/**
 * How a task is over: `entry` when what it asks for is booked (counted, potted, checked, pulled), `stage` when the batch's next stage is
 * said to have begun, `tick` when somebody says that it is done, since no entry of the ledger would.
 */
export type TaskEnding = 'entry' | 'stage' | 'tick';
