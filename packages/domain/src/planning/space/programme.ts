/** A way to start a batch, of which a plan takes one or none. */
export interface ProgrammeChoice {
  /** A name of letters, digits and underscores. */
  name: string;
  /** What it is worth, and what it takes of each limit by the limit's place. Whole numbers. */
  worth: number;
  takes: readonly { limit: number; amount: number }[];
}

/** A mixed-integer programme: of each group at most one choice, no limit passed, and the most worth. Nothing chosen is always an answer. */
export interface Programme {
  groups: readonly (readonly ProgrammeChoice[])[];
  limits: readonly number[];
}

export interface ProgrammeAnswer {
  /** Names of the choices taken. */
  chosen: readonly string[];
  /** By which share of its worth a better answer could exist at most: 0 where there is none. */
  within: number;
}

/** Solves a programme. Handed in, since a solver is no part of the domain. */
export type SolveProgramme = (programme: Programme) => Promise<ProgrammeAnswer>;
