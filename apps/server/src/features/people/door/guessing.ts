import type { Database } from '../../../db/pool.ts';
import { Refusal, refuse } from '../../../refusal.ts';
import type { Asker } from '../../../slow-hashing.ts';
import type { Door } from '../../../trpc/door.ts';
import { deviceKeyOf } from './sessions.ts';
import { beginGuess, forgiveGuess, type Guess } from './store.ts';

/** Who guesses at what, from where. */
export interface Guesser {
  database: Database;
  door: Door;
  address: string;
  now: Date;
}

/** Thrown by what a guess is tried with: it was wrong, and stays counted. */
export class WrongGuess extends Error {
  constructor(readonly refusal: Refusal) {
    super(refusal.code);
  }
}

/**
 * Lets a secret of an account be tried. It is counted as wrong before anything is hashed, and only the right one is forgiven: so the limits
 * hold for guesses that are sent at once. What was not tried at all, since the server is busy or broke, does not count.
 */
export async function guessing<Answer>(
  guesser: Guesser,
  email: string,
  attempt: (guess: Guess, asker: Asker) => Promise<Answer>,
): Promise<Answer> {
  const { database, door, now } = guesser;
  const network = guesser.address;
  const guess = await beginGuess(database, { email, network, deviceKey: deviceKeyOf(door), at: now });
  const asker = guess.subjects[0]?.startsWith('device:') ? 'known' : 'strangers';
  const note = (reason: string) =>
    door.note({
      event: 'sign-in refused',
      reason,
      personId: guess.personId,
      address: guesser.address,
      device: asker === 'known' ? 'known' : 'unknown',
    });
  if (guess.waitSeconds > 0) {
    note('waits');
    refuse('too-many-sign-ins', { waitSeconds: guess.waitSeconds });
  }
  try {
    const answer = await attempt(guess, asker);
    await forgiveGuess(database, guess.subjects, true);
    return answer;
  } catch (error) {
    if (error instanceof WrongGuess) {
      note(error.refusal.code);
      throw error.refusal;
    }
    await forgiveGuess(database, guess.subjects, false);
    throw error;
  }
}
