import type { ErrorSentences } from '../../errors.ts';
import { plural } from '../words.ts';

export const people = {
  'wrong-sign-in': () => 'This address and password do not belong together. Check both.',
  'too-many-sign-ins': ({ waitMinutes }) => plural(waitMinutes, { one: 'Too many tries. Wait # minute, then try again.', other: 'Too many tries. Wait # minutes, then try again.' }),
  'nursery-exists': () => 'This server already has a nursery. Sign in instead.',
  'email-taken': ({ email }) => `Somebody with the address ${email} is here already.`,
  'last-owner': () => 'A nursery needs at least one owner. Make somebody else an owner first.',
  'wrong-password': () => 'This is not your current password. Type it once more.',
  'unknown-zone': ({ zone }) => `${zone} is no time zone. Choose one from the list.`,
} satisfies Partial<ErrorSentences>;
