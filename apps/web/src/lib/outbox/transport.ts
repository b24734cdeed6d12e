/** Sends entries and sorts what came back into the few things that the outbox acts on. */
import type { EntryOutcome } from '@rootclock/contracts';
import { readFailure, type Failure } from '../api/failure.ts';
import { dependedOnBy, type Entry } from './queue.ts';

export type Outcome =
  | { kind: 'answered'; answer: unknown }
  /** Nobody knows whether it took effect: it is sent again with the same id. */
  | { kind: 'lost'; failure: Failure }
  /** It did not take effect and goes out after the next sign-in. */
  | { kind: 'signed-out' }
  /** It did not take effect, since somebody else is signed in now; it goes out when its own person is again. */
  | { kind: 'another-person' }
  | { kind: 'refused'; failure: Failure }
  /** It was not tried, since one before it that it depends on was refused. */
  | { kind: 'left-out' };

/** One outcome an entry, in order. Those that have none wait on. */
export type Transport = (entries: readonly Entry[]) => Promise<readonly Outcome[]>;

/** A fault may be a passing one: the same id is tried this often before the entry is parked for a person to look at. */
const FAULT_TRIES = 4;

export function outcomeOf(failure: Failure, triesBefore: number): Outcome {
  if (failure.code === 'not-signed-in') return { kind: 'signed-out' };
  if (failure.code === 'another-person') return { kind: 'another-person' };
  if (failure.class === 'retry') return { kind: 'lost', failure };
  if (failure.class === 'fault' && triesBefore + 1 < FAULT_TRIES) return { kind: 'lost', failure };
  return { kind: 'refused', failure };
}

/** The ways to the server. Each entry goes out in the name of whoever made it, not of whoever the tab is of now. */
export interface Ways {
  send(name: string, id: string, body: unknown, personId: string): Promise<unknown>;
  sendTogether(entries: readonly (Entry & { after: readonly string[] })[]): Promise<readonly EntryOutcome[]>;
  /** The way of an entry that a file goes with. */
  sendWithBytes(entry: Entry, bytes: Blob): Promise<unknown>;
  bytesOf(id: string): Promise<Blob | null>;
}

export function transportBy(ways: Ways): Transport {
  return async (entries) => {
    const [head, ...rest] = entries;
    if (!head) return [];
    return rest.length > 0 ? together(ways, head, entries) : [await alone(ways, head)];
  };
}

async function alone(ways: Ways, entry: Entry): Promise<Outcome> {
  try {
    const bytes = entry.hasBytes ? await ways.bytesOf(entry.id) : null;
    const answer = bytes
      ? await ways.sendWithBytes(entry, bytes)
      : await ways.send(entry.name, entry.id, entry.body, entry.personId);
    return { kind: 'answered', answer };
  } catch (error) {
    return outcomeOf(readFailure(error), entry.tries);
  }
}

async function together(ways: Ways, head: Entry, entries: readonly Entry[]): Promise<readonly Outcome[]> {
  try {
    const outcomes = await ways.sendTogether(
      entries.map((entry, at) => ({ ...entry, after: dependedOnBy(entry, entries.slice(0, at)) })),
    );
    return outcomes.map((outcome, at) =>
      outcome.kind === 'refused' ? outcomeOf(outcome.failure, entries[at]?.tries ?? 0) : outcome,
    );
  } catch (error) {
    const failure = readFailure(error);
    const outcome = outcomeOf(failure, head.tries);
    // What is said of the whole request says nothing of an entry: the first goes alone the next time.
    return [outcome.kind === 'refused' ? { kind: 'lost', failure } : outcome];
  }
}
