/**
 * Where the outbox is kept: in the browser's database, so that a reload or a flat battery loses nothing. One record an entry, and
 * what it carries in a record beside it, so that a change writes what it changes. Every change reads and writes in one transaction,
 * so tabs cannot overwrite each other. Where the browser keeps nothing (some private windows) it lives in memory and says so.
 */
import { createStore, promisifyRequest } from 'idb-keyval';
import type { Entry, Queue } from './queue.ts';

export interface Storage {
  read(): Promise<Queue>;
  /** What the new entries among the changed carry comes with them. */
  change(how: (queue: Queue) => Queue, carried?: ReadonlyMap<string, Blob>): Promise<Queue>;
  /** What an entry carries; null where it carries nothing. */
  bytesOf(id: string): Promise<Blob | null>;
  /** False once entries would not survive a reload. */
  lasting(): boolean;
}

export function memoryStorage(queue: Queue = []): Storage {
  const bytes = new Map<string, Blob>();
  return {
    read: async () => queue,
    change: async (how, carried = new Map()) => {
      queue = how(queue);
      for (const [id, blob] of carried) bytes.set(id, blob);
      for (const id of bytes.keys()) if (!queue.some((entry) => entry.id === id)) bytes.delete(id);
      return queue;
    },
    bytesOf: async (id) => bytes.get(id) ?? null,
    lasting: () => false,
  };
}

/** An entry as it lies in its record. Places rise along the queue. */
interface Kept {
  place: number;
  entry: Entry;
}

const entryKey = (id: string) => ['entry', id];
const bytesKey = (id: string) => ['bytes', id];
const allOf = (kind: 'entry' | 'bytes') => IDBKeyRange.bound([kind], [kind, []]);
/** Versions before this one kept the whole list in one record. A tab of theirs may still be open and write it again. */
const LIST_OF_BEFORE = 'queue';

/** All entries in order. What an older version kept is taken over in the same transaction. */
async function readKept(records: IDBObjectStore): Promise<Kept[]> {
  const [kept, before] = await Promise.all([
    promisifyRequest<Kept[]>(records.getAll(allOf('entry'))),
    promisifyRequest<Queue | undefined>(records.get(LIST_OF_BEFORE)),
  ]);
  kept.sort((a, b) => a.place - b.place);
  if (before === undefined) return kept;
  const known = new Set(kept.map(({ entry }) => entry.id));
  for (const entry of before) {
    if (known.has(entry.id)) continue;
    const taken = { place: (kept.at(-1)?.place ?? 0) + 1, entry };
    records.put(taken, entryKey(entry.id));
    kept.push(taken);
  }
  records.delete(LIST_OF_BEFORE);
  return kept;
}

const placeBetween = (last: number, following: number | undefined): number =>
  following === undefined ? last + 1 : (last + following) / 2;

/** Writes what differs. An entry that takes the place of another lies between the neighbors of that one. */
function writeChanged(
  records: IDBObjectStore,
  kept: readonly Kept[],
  queue: Queue,
  carried: ReadonlyMap<string, Blob>,
): void {
  const before = new Map(kept.map((each) => [each.entry.id, each]));
  const places = queue.map((entry) => before.get(entry.id)?.place);
  let last = 0;
  for (const [at, entry] of queue.entries()) {
    const was = before.get(entry.id);
    before.delete(entry.id);
    const place =
      was?.place ??
      placeBetween(
        last,
        places.slice(at).find((each) => each !== undefined),
      );
    last = place;
    if (was?.entry !== entry) records.put({ place, entry } satisfies Kept, entryKey(entry.id));
  }
  for (const [id, blob] of carried) records.put(blob, bytesKey(id));
  for (const id of before.keys()) {
    records.delete(entryKey(id));
    records.delete(bytesKey(id));
  }
}

const done = (records: IDBObjectStore) => promisifyRequest(records.transaction);

export function deviceStorage(): Storage {
  const store = createStore('rootclock-outbox', 'entries');
  let known: Queue = [];
  /** Takes over once the browser's database fails, with what was last seen in it; entries that stay there come again, and do no harm. */
  let spare: Storage | null = null;
  const orSpare = async <Answer>(work: () => Promise<Answer>, instead: (from: Storage) => Promise<Answer>) => {
    if (spare) return instead(spare);
    try {
      return await work();
    } catch {
      spare ??= memoryStorage(known);
      return instead(spare);
    }
  };
  const read = () =>
    store('readwrite', async (records) => {
      const kept = await readKept(records);
      await done(records);
      return (known = kept.map(({ entry }) => entry));
    });
  return {
    read: () => orSpare(read, (from) => from.read()),
    change: (how, carried = new Map()) =>
      orSpare(
        () =>
          store('readwrite', async (records) => {
            const kept = await readKept(records);
            const changed = how(kept.map(({ entry }) => entry));
            writeChanged(records, kept, changed, carried);
            await done(records);
            return (known = changed);
          }),
        (from) => from.change(how, carried),
      ),
    bytesOf: (id) =>
      orSpare(
        () =>
          store(
            'readonly',
            async (records) => (await promisifyRequest<Blob | undefined>(records.get(bytesKey(id)))) ?? null,
          ),
        (from) => from.bytesOf(id),
      ),
    lasting: () => spare === null,
  };
}
