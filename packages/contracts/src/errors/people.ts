import { errorKind } from './kind.ts';

export const peopleErrors = {
  'wrong-sign-in': errorKind('access', 401),
  'too-many-sign-ins': errorKind<{ waitMinutes: number }>('access', 429),
  'nursery-exists': errorKind('refusal', 409),
  'email-taken': errorKind<{ email: string }>('refusal', 409),
  'last-owner': errorKind('refusal', 409),
  /** The current password was not the right one. */
  'wrong-password': errorKind('input', 400),
  'unknown-zone': errorKind<{ zone: string }>('input', 400),
} as const;
