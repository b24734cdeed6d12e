import type { Role } from '@rootclock/domain';

/** Whether a person is asked for a code after the password. */
export interface SecondStepState {
  /** Null while it is off. */
  since: string | null;
  /** Recovery codes that were not used yet. */
  codesLeft: number;
}

/** Where a person is signed in. */
export interface SessionRow {
  id: string;
  /** As the browser calls itself, null where it says nothing that is known. */
  browser: string | null;
  system: string | null;
  openedAt: string;
  /** To the hour. */
  seenAt: string;
  /** The one that asks. */
  here: boolean;
}

export interface PersonRow {
  id: string;
  edition: number;
  name: string;
  email: string;
  role: Role;
  endedAt: string | null;
}
