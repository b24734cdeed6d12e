/** Where a person is signed in. */
export const door = {
  sessions: {
    title: 'Where you’re signed in',
    lead: 'Don’t know one of these? End it, then change your password.',
    device: (browser: string | null, system: string | null) => (browser && system ? `${browser} on ${system}` : (browser ?? system ?? 'Unknown device')),
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
};
