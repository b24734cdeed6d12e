import { errorKind } from './kind.ts';

export const planningErrors = {
  /** Tasks that an entry ends are not ticked: the entry is what counts. */
  'task-ends-by-entry': errorKind<{ kind: string; of: string }>('refusal', 409),
} as const;
