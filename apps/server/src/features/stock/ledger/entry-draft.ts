import type { EntryKind } from '@rootclock/domain';

/** An entry before it is written: what was done, on which day, and why. */
export interface EntryDraft {
  kind: EntryKind;
  happenedOn: string;
  cause?: string | null;
  note?: string;
  details?: Record<string, unknown>;
  reversesId?: string;
  /** Plants only change places, none of which is for quarantine, so that as many can be promised as before. */
  isOnlyMoved?: boolean;
  /** What the entry is about where no movement says so: a hold, an observation, a treatment. */
  subjects?: { kind: 'lot' | 'batch' | 'place' | 'source' | 'line'; id: string }[];
}
