/** A session as its browser is given it. How long it lasts is told in seconds, since the clock of a device may be wrong. */
export interface OpenedSession {
  token: string;
  seconds: number;
  device: string;
  deviceSeconds: number;
}

/** What is told to the log of guesses: who, from where and why, and nothing that could be guessed with. */
export interface DoorEvent {
  event: 'sign-in refused';
  reason: string;
  personId: string | null;
  address: string;
  device: 'known' | 'unknown';
}

/** The browser's side of sessions: what it brought of them, and how they are given to it. */
export interface Door {
  sessionToken: string | null;
  /** What this device was given at a sign-in before, whoever signed in. */
  deviceSecret: string | null;
  /** What the browser says it is. */
  agent: string;
  open(session: OpenedSession): void;
  close(): void;
  note(event: DoorEvent): void;
}

/** The door of a caller without a browser: nothing was brought, and what is given goes nowhere. */
export const noDoor: Door = {
  sessionToken: null,
  deviceSecret: null,
  agent: '',
  open: () => {},
  close: () => {},
  note: () => {},
};
