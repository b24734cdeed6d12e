import type { ErrorSentences } from '../../errors.ts';
import { plural } from '../words.ts';

export const people = {
  'wrong-sign-in': () => 'This address and password do not belong together. Check both.',
  'too-many-sign-ins': ({ waitSeconds }) =>
    waitSeconds < 60
      ? plural(waitSeconds, {
          one: 'Too many tries. Wait # second, then try again.',
          other: 'Too many tries. Wait # seconds, then try again.',
        })
      : plural(Math.ceil(waitSeconds / 60), {
          one: 'Too many tries. Wait # minute, then try again.',
          other: 'Too many tries. Wait # minutes, then try again.',
        }),
  'sign-ins-busy': () => 'Too many people are signing in right now. Wait a moment, then try again.',
  'not-in-a-batch': () => 'This has to be sent by itself. Reload the page and try again.',
  'nursery-exists': () => 'This server already has a nursery. Sign in instead.',
  'email-taken': ({ email }) => `Somebody with the address ${email} is here already.`,
  'last-owner': () => 'A nursery needs at least one owner. Make somebody else an owner first.',
  'wrong-password': () => 'This is not your current password. Type it once more.',
  'own-password': () => 'Change your own password under “You and this device”.',
  'common-password': () => 'This password is easy to guess. Try four words that don’t belong together.',
  'known-name-password': () => 'Leave out your name, your email address and the nursery’s name.',
  'second-step-needed': () => 'Enter the 6 digits from your app, or a recovery code.',
  'wrong-code': () => 'That code doesn’t work. Each code works once. Enter the newest one.',
  'own-second-step': () => 'Turn off your own second step under “You and this device”.',
  'second-step-changed': () => 'This was changed on another device. Reload the page.',
  'unknown-zone': ({ zone }) => `${zone} is no time zone. Choose one from the list.`,
} satisfies Partial<ErrorSentences>;
