import { plural } from './words.ts';

/** What happens between a tap and the server's answer. */
export const outbox = {
  title: 'Outbox',
  lead: 'Each entry is kept on this device until the server has answered.',
  noAnswer: 'The server does not answer. Check the connection and try again.',
  fault: (requestId: string | null): string =>
    `The server stumbled and could not do this.${requestId ? ` If it happens again, give this number to whoever looks after the server: ${requestId}.` : ''}`,
  looking: 'Checking what waits',
  allSent: 'Everything is sent',
  allSentText: 'The server has answered every entry made on this device.',
  waiting: (count: number) => plural(count, { one: '# entry waits to be sent', other: '# entries wait to be sent' }),
  attention: (count: number) => plural(count, { one: '# entry needs attention', other: '# entries need attention' }),
  waitingTitle: 'Waiting to be sent',
  attentionTitle: 'Needs attention',
  offline: 'No connection',
  sending: 'Sending',
  enteredAt: 'Entered',
  tries: (count: number) => plural(count, { zero: 'not tried yet', one: 'tried once', other: 'tried # times' }),
  refusedBecause: 'The server refused it',
  dependsOnOther: 'It needs an entry that the server refused. It goes out by itself once that one is put right.',
  typed: 'What was entered',
  sendAgain: 'Send again',
  mending:
    'The server refused this entry. Put it right and send it again; it takes the place of the one in the outbox.',
  mend: 'Put right',
  clash: {
    title: (by: string | null) => `${by ?? 'Somebody else'} changed this while you were typing.`,
    savedAt: (when: string) => `Saved ${when}. Yours isn’t saved yet.`,
    nothingSaved: 'Yours isn’t saved yet.',
    yours: 'Yours',
    theirs: 'Theirs',
    keepMine: 'Keep mine',
    takeTheirs: 'Take theirs',
    nothing: 'Empty',
    yes: 'Yes',
    no: 'No',
  },
  discard: 'Discard',
  discardTitle: 'Discard this entry?',
  discardText: 'What was entered is then gone from this device, and the server never had it. This cannot be undone.',
  discardConfirm: 'Discard the entry',
  parkedToast: 'An entry was refused and is kept in the outbox.',
  show: 'Show',
  signInAgain: 'Sign in again to send what waits here.',
  somebodyElse: (count: number) =>
    plural(count, {
      one: '# entry of somebody else waits for their sign-in.',
      other: '# entries of others wait for their sign-in.',
    }),
  notLasting: 'This browser keeps nothing when it is closed: leave this page open until everything is sent.',
};
