import type { ErrorSentences } from '../../errors.ts';
import { days, plural } from '../words.ts';

export const general = {
  'invalid-input': () => 'Something here is not right yet.',
  'not-signed-in': () => 'You are not signed in any more. Sign in again; what you entered is kept.',
  'another-person': () => 'Somebody else is signed in now. Your entry is kept until you sign in again.',
  'not-allowed': () => 'Your role does not allow this. An owner can change what you may do.',
  'not-found': () => 'This does not exist in your nursery.',
  'forged-request': () =>
    'The server did not trust where this request came from. Open Rootclock at its own address and try again.',
  'body-too-large': ({ mostKilobytes }) =>
    `This is too much to send at once: ${mostKilobytes} kB is the most. Send fewer lines at a time.`,
  'too-many-requests': ({ waitSeconds }) =>
    plural(waitSeconds, {
      one: 'Too many requests came from your address. Wait # second and try again.',
      other: 'Too many requests came from your address. Wait # seconds and try again.',
    }),
  'too-much-at-once': () => 'You asked for too much at once. Wait a moment and try again.',
  'command-id-reused': () => 'This entry was already sent with other content. Reload the page and enter it once more.',
  'id-taken': () => 'This already exists. Reload the page to see it.',
  'code-taken': ({ code }) => `The code ${code} is in use already. Choose another.`,
  'edited-meanwhile': ({ by }) => `${by ?? 'Somebody else'} changed this while you were typing. Nothing was saved yet.`,
  'day-in-future': ({ day, today }) => `${days.long(day)} is still to come. Choose ${days.long(today)} or earlier.`,
  'day-too-early': ({ day, earliest }) =>
    `${days.long(day)} is before it began. Choose ${days.long(earliest)} or later.`,
  'outcome-unknown': () => 'The server could not say whether this was booked. It is being asked again.',
  fault: () => 'The server stumbled. Nothing is lost; try again in a moment.',
} satisfies Partial<ErrorSentences>;
