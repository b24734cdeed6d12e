import { errorKind } from './kind.ts';

export const peopleErrors = {
  'wrong-sign-in': errorKind('access', 401),
  'too-many-sign-ins': errorKind<{ waitSeconds: number }>('access', 429),
  /** More passwords are being checked than the server can check at once. */
  'sign-ins-busy': errorKind('retry', 503),
  'not-in-a-batch': errorKind('input', 400),
  'nursery-exists': errorKind('refusal', 409),
  'email-taken': errorKind<{ email: string }>('refusal', 409),
  'last-owner': errorKind('refusal', 409),
  /** The current password was not the right one. */
  'wrong-password': errorKind('input', 400),
  /** One's own password is changed where the present one is asked for. */
  'own-password': errorKind('refusal', 409),
  'common-password': errorKind('input', 400),
  'known-name-password': errorKind('input', 400),
  /** The password was right, and now a code is asked for. */
  'second-step-needed': errorKind('access', 401),
  'wrong-code': errorKind('access', 401),
  /** One's own second step is turned off with the password and a code. */
  'own-second-step': errorKind('refusal', 409),
  /** It was turned on or off in another place. */
  'second-step-changed': errorKind('refusal', 409),
  'unknown-zone': errorKind<{ zone: string }>('input', 400),
} as const;
