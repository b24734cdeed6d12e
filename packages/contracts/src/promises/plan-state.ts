import * as z from 'zod/mini';

export const planState = z.strictObject({});

export interface PlanState {
  /** The instant since which promises wait to be worked out anew; null where they are. */
  staleSince: string | null;
}
