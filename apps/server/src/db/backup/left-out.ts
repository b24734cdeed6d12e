/** What a backup does not hold, by table: the rows that it keeps all the same, and why the others stay out. */
export interface LeftOut {
  /** The rows that are kept, as a condition; false where none is. */
  kept: string;
  why: string;
}

/** Every table is in a backup with all its rows unless it is named here. */
export const LEFT_OUT: Record<string, LeftOut> = {
  _prisma_migrations: { kept: 'false', why: 'The manifest names the migrations, and a restore applies them anew.' },
  sign_in_pace: { kept: 'false', why: 'How long the door waits after wrong passwords is of the moment.' },
  token: {
    kept: `kind NOT IN ('session', 'device')`,
    why: 'Whoever was signed out since must not be signed in again by a restore: everybody signs in anew.',
  },
};
