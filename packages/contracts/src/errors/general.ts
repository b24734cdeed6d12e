import { errorKind } from './kind.ts';

export interface InputIssue {
  /** Dotted path of the field in the form, '' for the whole. */
  path: string;
  /** What is wrong, from a short list that the screens have sentences for. */
  problem: 'required' | 'not-a-number' | 'not-whole' | 'too-small' | 'too-big' | 'too-long' | 'too-short' | 'not-a-date' | 'far-year' | 'broken-text' | 'too-many-alternatives' | 'not-a-share' | 'not-a-purity' | 'not-a-choice' | 'wrong-form' | 'unknown-field';
  least?: number;
  most?: number;
}

/** Errors that any command or read may meet. */
export const generalErrors = {
  'invalid-input': errorKind<{ issues: InputIssue[] }>('input', 400),
  'not-signed-in': errorKind('access', 401),
  'not-allowed': errorKind<{ role: string; needs: string[] }>('access', 403),
  /** The same answer for what does not exist and for what is another nursery's. */
  'not-found': errorKind<{ what: string }>('access', 404),
  'forged-request': errorKind('access', 403),
  'command-id-reused': errorKind<{ command: string }>('refusal', 409),
  'id-taken': errorKind<{ what: string }>('refusal', 409),
  'code-taken': errorKind<{ code: string }>('refusal', 409),
  'day-in-future': errorKind<{ day: string; today: string }>('input', 400),
  'day-too-early': errorKind<{ day: string; earliest: string }>('input', 400),
  'outcome-unknown': errorKind('retry', 503),
  fault: errorKind('fault', 500),
} as const;
