// The outbox in a browser's database, as the standard describes one.
import 'fake-indexeddb/auto';
import { createStore, entries as recordsOf, get, set } from 'idb-keyval';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { IDBFactory } from 'fake-indexeddb';
import { reduce, type Entry } from './queue.ts';
import { deviceStorage } from './storage.ts';

const LIST_OF_BEFORE = 'queue';
const entry = (id: string, change: Partial<Entry> = {}): Entry => ({
  id,
  name: 'stock.move',
  title: '',
  body: { units: 3 },
  personId: 'ann',
  enteredAt: 0,
  creates: [],
  from: '/stock',
  tries: 0,
  dueAt: 0,
  parked: null,
  ...change,
});
const enter =
  (id: string, change: Partial<Entry> = {}, replaces?: string) =>
  (queue: readonly Entry[]) =>
    reduce(queue, { kind: 'entered', entry: entry(id, change), ...(replaces === undefined ? {} : { replaces }) });
const answer = (id: string) => (queue: readonly Entry[]) => reduce(queue, { kind: 'answered', id });
const ids = (queue: readonly Entry[]) => queue.map(({ id }) => id);
const rawStore = () => createStore('rootclock-outbox', 'entries');
const records = async () => (await recordsOf(rawStore())).map(([key]) => String(key)).sort();

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

describe('the outbox of a device', () => {
  it('keeps one record an entry, in the order in which they were made', async () => {
    const storage = deviceStorage();
    for (const id of ['c', 'a', 'b']) await storage.change(enter(id));
    expect(ids(await deviceStorage().read())).toEqual(['c', 'a', 'b']);
    expect(await records()).toEqual(['entry,a', 'entry,b', 'entry,c']);
  });

  it('keeps what an entry carries beside it, until it is answered', async () => {
    const storage = deviceStorage();
    await storage.change(enter('photo', { hasBytes: true }), new Map([['photo', new Blob(['a photo'])]]));
    await storage.change(enter('then'));
    const again = deviceStorage();
    expect(await (await again.bytesOf('photo'))?.text()).toBe('a photo');
    expect(await again.bytesOf('then')).toBeNull();
    expect(await records()).toEqual(['bytes,photo', 'entry,photo', 'entry,then']);
    await again.change(answer('photo'));
    expect(await records()).toEqual(['entry,then']);
  });

  it('writes an entry anew only where it changed', async () => {
    const storage = deviceStorage();
    for (const id of ['a', 'b']) await storage.change(enter(id));
    const before = await get(['entry', 'b'], rawStore());
    await set(['entry', 'b'], { ...(before as object), mark: 'untouched' }, rawStore());
    await storage.change((queue) => reduce(queue, { kind: 'lost', id: 'a', now: 0 }));
    expect(await get(['entry', 'b'], rawStore())).toMatchObject({ mark: 'untouched' });
    expect((await storage.read())[0]).toMatchObject({ id: 'a', tries: 1 });
  });

  it('gives a mended entry the place of the refused one, however often', async () => {
    const storage = deviceStorage();
    for (const id of ['a', 'b', 'c']) await storage.change(enter(id));
    for (let round = 0; round < 60; round += 1)
      await storage.change(enter(`b${round}`, {}, round === 0 ? 'b' : `b${round - 1}`));
    await storage.change(enter('d'));
    expect(ids(await deviceStorage().read())).toEqual(['a', 'b59', 'c', 'd']);
  });

  it('loses nothing where several tabs change it at once', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.nat({ max: 2 }), { minLength: 1, maxLength: 30 }), async (turns) => {
        globalThis.indexedDB = new IDBFactory();
        const tabs = [deviceStorage(), deviceStorage(), deviceStorage()];
        await Promise.all(turns.map((tab, at) => tabs[tab]?.change(enter(`e${at}`))));
        expect(ids(await deviceStorage().read()).toSorted()).toEqual(turns.map((_, at) => `e${at}`).toSorted());
        await Promise.all(turns.map((tab, at) => tabs[tab]?.change(answer(`e${at}`))));
        expect(await records()).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  it('lives in memory where the database fails, with what was last seen in it, and says so', async () => {
    const storage = deviceStorage();
    await storage.change(enter('a'));
    const unclonable = { units: () => 3 };
    await storage.change(enter('b', { body: unclonable }));
    expect(storage.lasting()).toBe(false);
    expect(ids(await storage.read())).toEqual(['a', 'b']);
    expect(ids(await deviceStorage().read())).toEqual(['a']);
  });
});

describe('what an older version kept in one record', () => {
  const before = [
    entry('a'),
    entry('b', { personId: 'ben', tries: 3, dueAt: 9 }),
    entry('c', { parked: { kind: 'depends', on: 'x' } }),
  ];

  it('is taken over as it was, once', async () => {
    await set(LIST_OF_BEFORE, before, rawStore());
    expect(await deviceStorage().read()).toEqual(before);
    expect(await records()).toEqual(['entry,a', 'entry,b', 'entry,c']);
    await deviceStorage().change(answer('a'));
    expect(ids(await deviceStorage().read())).toEqual(['b', 'c']);
  });

  it('is taken over by whichever tab comes first, and by no other again', async () => {
    await set(LIST_OF_BEFORE, before, rawStore());
    const queues = await Promise.all([
      deviceStorage().read(),
      deviceStorage().change(enter('d')),
      deviceStorage().read(),
    ]);
    expect(queues.map(ids)).toEqual([
      ['a', 'b', 'c'],
      ['a', 'b', 'c', 'd'],
      ['a', 'b', 'c', 'd'],
    ]);
  });

  it('is taken over later, too, where a tab of that version is still open and keeps more', async () => {
    await deviceStorage().change(enter('new'));
    await set(LIST_OF_BEFORE, [entry('new'), entry('late')], rawStore());
    expect(ids(await deviceStorage().read())).toEqual(['new', 'late']);
  });
});
