import { plural } from '../words.ts';

/** Where a person is signed in, and the second step after the password. */
export const door = {
  sessions: {
    title: 'Where you’re signed in',
    lead: 'Don’t know one of these? End it, then change your password.',
    device: (browser: string | null, system: string | null) =>
      browser && system ? `${browser} on ${system}` : (browser ?? system ?? 'Unknown device'),
    here: 'this device',
    since: (at: string) => `Signed in ${at}`,
    seen: (at: string) => `Last used ${at}`,
    end: 'End',
    endNamed: (device: string) => `End ${device}`,
    endOthers: 'End all others',
    ended: 'That device is signed out.',
    othersEnded: 'All your other devices are signed out.',
    only: 'You’re signed in nowhere else.',
  },
  second: {
    title: 'Second step',
    lead: 'After your password, we ask for a code from an app on your phone. A stolen password alone is no use.',
    on: (at: string) => `On since ${at}.`,
    codesLeft: (count: number) =>
      plural(count, {
        zero: 'No recovery codes left. Turn it off and on again for new ones.',
        one: '# recovery code left.',
        other: '# recovery codes left.',
      }),
    setUp: 'Set it up',
    setUpTitle: 'Set up a second step',
    password: 'Your password',
    next: 'Next',
    scan: 'Scan this with an authenticator app.',
    picture: 'Square code with your key for the app',
    key: 'Or type this key into the app',
    code: '6-digit code from the app',
    turnOn: 'Turn it on',
    codesTitle: 'Keep these recovery codes',
    codesLead: 'Each code works once, if you lose your phone. Write them down. We can’t show them again.',
    copy: 'Copy the codes',
    copied: 'Copied',
    copyFailed: 'The codes couldn’t be copied. Write them down.',
    done: 'I kept them',
    turnOff: 'Turn it off',
    turnOffTitle: 'Turn off the second step',
    anyCode: 'Code from the app, or a recovery code',
    isOff: 'The second step is off.',
    ofPerson: 'Second step is on.',
    remove: 'Remove second step',
    removed: (name: string) => `${name} signs in with the password alone now.`,
  },
};
