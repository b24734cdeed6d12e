/** Sends one entry and sorts what came back into the four things that the outbox acts on. */
import { readFailure, type Failure } from '../api/failure.ts';
import type { Entry } from './queue.ts';

export type Outcome =
  | { kind: 'answered'; answer: unknown }
  /** Nobody knows whether it took effect: it is sent again with the same id. */
  | { kind: 'lost'; failure: Failure }
  /** It did not take effect and goes out after the next sign-in. */
  | { kind: 'signed-out' }
  /** It did not take effect, since somebody else is signed in now; it goes out when its own person is again. */
  | { kind: 'another-person' }
  | { kind: 'refused'; failure: Failure };

export type Transport = (entry: Entry) => Promise<Outcome>;

/** A fault may be a passing one: the same id is tried this often before the entry is parked for a person to look at. */
const FAULT_TRIES = 4;

export function outcomeOf(failure: Failure, triesBefore: number): Outcome {
  if (failure.code === 'not-signed-in') return { kind: 'signed-out' };
  if (failure.code === 'another-person') return { kind: 'another-person' };
  if (failure.class === 'retry') return { kind: 'lost', failure };
  if (failure.class === 'fault' && triesBefore + 1 < FAULT_TRIES) return { kind: 'lost', failure };
  return { kind: 'refused', failure };
}

/** Each entry goes out in the name of whoever made it, not of whoever the tab is of now. */
export function transportBy(
  send: (name: string, id: string, body: unknown, personId: string) => Promise<unknown>,
): Transport {
  return async (entry) => {
    try {
      return { kind: 'answered', answer: await send(entry.name, entry.id, entry.body, entry.personId) };
    } catch (error) {
      return outcomeOf(readFailure(error), entry.tries);
    }
  };
}
