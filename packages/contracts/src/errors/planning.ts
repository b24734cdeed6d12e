import { errorKind } from './kind.ts';

export const planningErrors = {
  /** Tasks that an entry ends are not ticked: the entry is what counts. */
  'task-ends-by-entry': errorKind<{ kind: string; of: string }>('refusal', 409),
  /** A season that is over is no demand. */
  'wanted-day-past': errorKind<{ day: string; today: string }>('input', 400),
  'demand-withdrawn': errorKind('refusal', 409),
  /** The planning thread gave no answer in time; nothing was written, and the plan can be asked for again. */
  'plan-takes-too-long': errorKind<{ seconds: number }>('refusal', 409),
} as const;
