/** A way to start a batch, of which a plan takes one or none. */
export interface ProgrammeChoice {
  /** A name of letters, digits and underscores. */
  name: string;
  /** What it is worth, and what it takes of each limit by the limit's place. Whole numbers. */
  worth: number;
  takes: readonly { limit: number; amount: number }[];
}

/**
 * A mixed-integer programme: of each group at most one choice, no limit passed, and the most worth. With `least`, the chosen ones must come to
 * at least so much of a second worth.
 */
export interface Programme {
  groups: readonly (readonly ProgrammeChoice[])[];
  limits: readonly number[];
  least: { worthOf: ReadonlyMap<string, number>; amount: number } | null;
}

export interface ProgrammeAnswer {
  /** Names of the choices taken. */
  chosen: readonly string[];
  /** Whether nothing better exists; false where the solver ran out of time. */
  proven: boolean;
}

/** Solves a programme exactly. Handed in, since a solver is no part of the domain. */
export type SolveProgramme = (programme: Programme) => Promise<ProgrammeAnswer>;
