/** Sends one entry and sorts what came back into the four things that the outbox acts on. */
import { readFailure, type Failure } from '../api/failure.ts';
import type { Entry } from './queue.ts';

export type Outcome =
  | { kind: 'answered'; answer: unknown }
  /** Nobody knows whether it took effect: it is sent again with the same id. */
  | { kind: 'lost'; failure: Failure }
  /** It did not take effect and goes out after the next sign-in. */
  | { kind: 'signed-out' }
  | { kind: 'refused'; failure: Failure };

export type Transport = (entry: Entry) => Promise<Outcome>;

/** A fault may be a passing one: the same id is tried this often before the entry is parked for a person to look at. */
const FAULT_TRIES = 4;

export function outcomeOf(failure: Failure, triesBefore: number): Outcome {
  if (failure.code === 'not-signed-in') return { kind: 'signed-out' };
  if (failure.class === 'retry') return { kind: 'lost', failure };
  if (failure.class === 'fault' && triesBefore + 1 < FAULT_TRIES) return { kind: 'lost', failure };
  return { kind: 'refused', failure };
}

export function transportBy(send: (name: string, id: string, body: unknown) => Promise<unknown>): Transport {
  return async (entry) => {
    try {
      return { kind: 'answered', answer: await send(entry.name, entry.id, entry.body) };
    } catch (error) {
      return outcomeOf(readFailure(error), entry.tries);
    }
  };
}
