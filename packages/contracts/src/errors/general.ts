import { errorKind } from './kind.ts';

export interface InputIssue {
  /** Dotted path of the field in the form, '' for the whole. */
  path: string;
  /** What is wrong, from a short list that the screens have sentences for. */
  problem:
    | 'required'
    | 'not-a-number'
    | 'not-whole'
    | 'too-small'
    | 'too-big'
    | 'too-long'
    | 'too-short'
    | 'not-a-date'
    | 'far-year'
    | 'broken-text'
    | 'too-many-alternatives'
    | 'not-a-share'
    | 'not-a-purity'
    | 'not-a-choice'
    | 'wrong-form'
    | 'unknown-field';
  least?: number;
  most?: number;
}

/** Two people changed one row: what both have of it. */
export interface Edited {
  /** That the row stands at now; an edit sent with it passes. */
  edition: number;
  /** Who saved it, and the instant, where the log of commands tells. */
  by: string | null;
  at: string | null;
  /** The fields that both changed. */
  fields: { field: string; stored: unknown; sent: unknown }[];
  /** All fields as they now stand. */
  stored: Record<string, unknown>;
  /** What people call the rows that these values name, by id. */
  called: Record<string, string>;
}

/** Errors that any command or read may meet. */
export const generalErrors = {
  'invalid-input': errorKind<{ issues: InputIssue[] }>('input', 400),
  'not-signed-in': errorKind('access', 401),
  /** The entry is one person's and the session another's: it waits until its own person signs in again. */
  'another-person': errorKind('access', 409),
  'not-allowed': errorKind<{ role: string; needs: string[] }>('access', 403),
  /** The same answer for what does not exist and for what is another nursery's. */
  'not-found': errorKind<{ what: string }>('access', 404),
  'forged-request': errorKind('access', 403),
  'body-too-large': errorKind<{ mostKilobytes: number }>('input', 413),
  /** Too many calls from one address: nothing was done, and the same can be sent again later. */
  'too-many-requests': errorKind<{ waitSeconds: number }>('retry', 429),
  /** Too many heavy questions of one person at a time: none was answered, and the same can be asked again in a moment. */
  'too-much-at-once': errorKind('retry', 503),
  'command-id-reused': errorKind<{ command: string }>('refusal', 409),
  'id-taken': errorKind<{ what: string }>('refusal', 409),
  'code-taken': errorKind<{ code: string }>('refusal', 409),
  /** Somebody else saved the row after it was read: nothing was written. */
  'edited-meanwhile': errorKind<Edited>('refusal', 409),
  'day-in-future': errorKind<{ day: string; today: string }>('input', 400),
  'day-too-early': errorKind<{ day: string; earliest: string }>('input', 400),
  'outcome-unknown': errorKind('retry', 503),
  fault: errorKind('fault', 500),
} as const;
