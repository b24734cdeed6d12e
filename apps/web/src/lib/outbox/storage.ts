/**
 * Where the outbox is kept: in the browser's database, so that a reload or a flat battery loses nothing. Every change reads and
 * writes in one transaction, so tabs cannot overwrite each other. Where the browser keeps nothing (some private windows) it
 * lives in memory and says so.
 */
import { createStore, get, update } from 'idb-keyval';
import type { Queue } from './queue.ts';

export interface Storage {
  read(): Promise<Queue>;
  change(how: (queue: Queue) => Queue): Promise<Queue>;
  /** False once entries would not survive a reload. */
  lasting(): boolean;
}

const KEY = 'queue';

export function memoryStorage(): Storage {
  let queue: Queue = [];
  return {
    read: async () => queue,
    change: async (how) => (queue = how(queue)),
    lasting: () => false,
  };
}

export function deviceStorage(): Storage {
  const store = createStore('rootclock-outbox', 'entries');
  const spare = memoryStorage();
  let broken = false;
  const orSpare = async <Answer>(work: () => Promise<Answer>, instead: () => Promise<Answer>): Promise<Answer> => {
    if (broken) return instead();
    try {
      return await work();
    } catch {
      broken = true;
      return instead();
    }
  };
  return {
    read: () => orSpare(async () => (await get<Queue>(KEY, store)) ?? [], spare.read),
    change: (how) =>
      orSpare(
        async () => {
          let changed: Queue = [];
          await update<Queue>(KEY, (queue) => (changed = how(queue ?? [])), store);
          return changed;
        },
        () => spare.change(how),
      ),
    lasting: () => !broken,
  };
}
