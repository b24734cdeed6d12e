import { describe, expect, it } from 'vitest';
import type { CommandError, Failure } from '../api/failure.ts';
import { Outbox, type Word } from './outbox.ts';
import { dependedOnBy, type Entry } from './queue.ts';
import { memoryStorage, type Storage } from './storage.ts';
import type { Outcome, Transport } from './transport.ts';

const refusal: Failure = { code: 'not-enough-units', class: 'refusal', data: { wanted: 13, available: 12, of: 'lot' } };
const NO_ANSWER: Failure = { code: 'no-answer', class: 'retry' };

/** A server that books each command id once, behind a line that can lose what it answers. */
function nursery() {
  const booked = new Map<string, unknown>();
  const sent: string[] = [];
  const line = { loseAnswers: 0, down: false, refuses: new Set<string>(), signedOut: false };
  const requests: string[][] = [];
  const serve = (entry: Entry): Outcome => {
    if (line.down) return { kind: 'lost', failure: NO_ANSWER };
    sent.push(entry.id);
    if (line.signedOut) return { kind: 'signed-out' };
    if (line.refuses.has(entry.id)) return { kind: 'refused', failure: refusal };
    if (!booked.has(entry.id)) booked.set(entry.id, { order: booked.size + 1 });
    if (line.loseAnswers > 0) {
      line.loseAnswers -= 1;
      return { kind: 'lost', failure: NO_ANSWER };
    }
    return { kind: 'answered', answer: booked.get(entry.id) };
  };
  const transport: Transport = async (entries) => {
    requests.push(entries.map(({ id }) => id));
    const outcomes: Outcome[] = [];
    const notTaken: Entry[] = [];
    for (const entry of entries) {
      const isLeftOut = dependedOnBy(entry, notTaken).length > 0;
      const outcome: Outcome = isLeftOut ? { kind: 'left-out' } : serve(entry);
      outcomes.push(outcome);
      if (outcome.kind === 'refused' || isLeftOut) notTaken.push(entry);
      else if (outcome.kind !== 'answered') break;
    }
    return outcomes;
  };
  return { booked, sent, requests, line, transport };
}

/** One tab, with a clock that only moves when the test says so. */
function tab(transport: Transport, storage: Storage, air: ((word: Word) => void)[] = []) {
  let now = 0;
  let timers: { at: number; run: () => void }[] = [];
  const parked: string[] = [];
  let mine: (word: Word) => void = () => {};
  const outbox = new Outbox({
    storage,
    transport,
    lock: (work) => work(),
    channel: {
      post: (word) => {
        for (const take of air) if (take !== mine) take(word);
      },
      listen: (take) => {
        mine = take;
        air.push(take);
      },
    },
    now: () => now,
    later: (run, ms) => timers.push({ at: now + ms, run }),
    onAnswered: () => {},
    onParked: (entry) => parked.push(entry.id),
    onAnotherPerson: () => {},
  });
  const settled = async () => {
    // The outbox works in promises only; a turn of the event loop lets all of them finish.
    await new Promise((resolve) => setImmediate(resolve));
  };
  const pass = async (ms: number) => {
    now += ms;
    const due = timers.filter((timer) => timer.at <= now);
    timers = timers.filter((timer) => timer.at > now);
    for (const timer of due) timer.run();
    await settled();
  };
  const enter = (id: string, replaces?: string) =>
    outbox.enter({ id, name: 'stock.move', title: '', body: { id }, creates: [], from: '/stock' }, { replaces });
  return { outbox, parked, settled, pass, enter };
}

describe('the outbox', () => {
  it('books once although the answer was lost twice', async () => {
    const { booked, sent, line, transport } = nursery();
    line.loseAnswers = 2;
    const { outbox, enter, settled, pass } = tab(transport, memoryStorage());
    await outbox.signedInAs('ann');
    const answer = enter('a');
    await settled();
    await pass(1_000);
    await pass(2_000);
    expect(await answer).toEqual({ order: 1 });
    expect(sent).toEqual(['a', 'a', 'a']);
    expect(booked.size).toBe(1);
  });

  it('keeps the order in which entries were made through a line that was down', async () => {
    const { booked, line, transport } = nursery();
    line.down = true;
    const { outbox, enter, settled, pass } = tab(transport, memoryStorage());
    await outbox.signedInAs('ann');
    const answers = [enter('a'), enter('b'), enter('c')];
    await settled();
    line.down = false;
    await pass(60_000);
    await Promise.all(answers);
    expect([...booked.keys()]).toEqual(['a', 'b', 'c']);
  });

  it('says nothing is saved before the server has answered', async () => {
    const { line, transport } = nursery();
    line.down = true;
    const { outbox, enter, settled } = tab(transport, memoryStorage());
    await outbox.signedInAs('ann');
    let said = false;
    void enter('a').then(() => (said = true));
    await settled();
    expect(said).toBe(false);
    expect(outbox.snapshot().queue).toMatchObject([{ id: 'a', tries: 1 }]);
  });

  it('gives a refused entry back to the form that waits for it', async () => {
    const { line, transport } = nursery();
    line.refuses.add('a');
    const { outbox, enter, settled, parked } = tab(transport, memoryStorage());
    await outbox.signedInAs('ann');
    const failed = enter('a').catch((error: CommandError) => error.failure);
    await settled();
    expect(await failed).toEqual(refusal);
    expect(outbox.snapshot().queue).toEqual([]);
    expect(parked).toEqual([]);
  });

  it('parks a refused entry whose form is gone, with its input, and goes on', async () => {
    const { booked, line, transport } = nursery();
    line.down = true;
    line.refuses.add('a');
    const { outbox, enter, settled, parked } = tab(transport, memoryStorage());
    await outbox.signedInAs('ann');
    void enter('a');
    void enter('b');
    await settled();
    outbox.release('a');
    line.down = false;
    await outbox.hurry();
    await settled();
    expect(parked).toEqual(['a']);
    expect(outbox.snapshot().queue).toMatchObject([{ id: 'a', body: { id: 'a' }, parked: { kind: 'refused' } }]);
    expect([...booked.keys()]).toEqual(['b']);
  });

  it('goes on after a reload with what was kept', async () => {
    const { booked, line, transport } = nursery();
    const storage = memoryStorage();
    line.down = true;
    const before = tab(transport, storage);
    await before.outbox.signedInAs('ann');
    void before.enter('a');
    await before.settled();
    line.down = false;
    const after = tab(transport, storage);
    await after.outbox.signedInAs('ann');
    await after.pass(1_000);
    expect([...booked.keys()]).toEqual(['a']);
    expect(after.outbox.snapshot().queue).toEqual([]);
  });

  it('waits for the next sign-in when the session is over, and loses nothing', async () => {
    const { booked, line, transport } = nursery();
    line.signedOut = true;
    const { outbox, enter, settled } = tab(transport, memoryStorage());
    await outbox.signedInAs('ann');
    const answer = enter('a');
    await settled();
    expect(outbox.snapshot()).toMatchObject({ signedOut: true, queue: [{ id: 'a' }] });
    line.signedOut = false;
    await outbox.signedInAs('ann');
    expect(await answer).toEqual({ order: 1 });
    expect(booked.size).toBe(1);
  });

  it('keeps what is entered after the session ended for whoever entered it', async () => {
    const { booked, line, transport } = nursery();
    line.signedOut = true;
    const { outbox, enter, settled } = tab(transport, memoryStorage());
    await outbox.signedInAs('ann');
    void enter('a');
    await settled();
    void enter('b');
    await settled();
    expect(outbox.snapshot().queue).toMatchObject([
      { id: 'a', personId: 'ann' },
      { id: 'b', personId: 'ann' },
    ]);
    line.signedOut = false;
    await outbox.signedInAs('ann');
    expect([...booked.keys()]).toEqual(['a', 'b']);
  });

  it('tells the tab that holds the form what another tab has sent', async () => {
    const { transport, line } = nursery();
    const storage = memoryStorage();
    const air: ((word: Word) => void)[] = [];
    const typing = tab(transport, storage, air);
    const sending = tab(transport, storage, air);
    await typing.outbox.signedInAs('ann');
    line.down = true;
    const answer = typing.enter('a');
    await typing.settled();
    line.down = false;
    await sending.outbox.signedInAs('ann');
    await sending.pass(1_000);
    expect(await answer).toEqual({ order: 1 });
  });
});

describe('entries that waited', () => {
  const LOT = '00000000-0000-4000-8000-000000000001';

  async function whileDown(world: ReturnType<typeof nursery>, entries: readonly { id: string; bytes?: Blob }[]) {
    world.line.down = true;
    const box = tab(world.transport, memoryStorage());
    await box.outbox.signedInAs('ann');
    for (const { id, bytes } of entries)
      void box.outbox
        .enter({ id, name: 'stock.move', title: '', body: { id }, creates: [], from: '/' }, { bytes })
        .catch(() => {});
    await box.settled();
    world.requests.length = 0;
    world.line.down = false;
    return box;
  }
  const many = (count: number) => Array.from({ length: count }, (_, at) => ({ id: `e${at}` }));

  it('go out in order, fifty at most in one request; the one that was tried in vain goes ahead alone', async () => {
    const world = nursery();
    const box = await whileDown(world, many(120));
    await box.outbox.hurry();
    await box.settled();
    expect(world.requests.map(({ length }) => length)).toEqual([1, 50, 50, 19]);
    expect([...world.booked.keys()]).toEqual(many(120).map(({ id }) => id));
    expect(box.outbox.snapshot().queue).toEqual([]);
  });

  it('go alone where a file goes with them, and keep their turn', async () => {
    const world = nursery();
    const box = await whileDown(world, [
      ...many(3),
      { id: 'photo', bytes: new Blob(['a photo']) },
      { id: 'then' },
      { id: 'last' },
    ]);
    await box.outbox.hurry();
    await box.settled();
    expect(world.requests).toEqual([['e0'], ['e1', 'e2'], ['photo'], ['then', 'last']]);
  });

  it('are parked with what they depend on, and the rest of the request takes effect', async () => {
    const world = nursery();
    world.line.refuses.add('pot');
    const box = await whileDown(world, many(1));
    const enter = (id: string, body: unknown, creates: string[] = []) =>
      void box.outbox.enter({ id, name: 'stock.pot', title: '', body, creates, from: '/' }).catch(() => {});
    enter('pot', { lotId: LOT }, [LOT]);
    enter('move', { lotId: LOT });
    enter('other', {});
    box.outbox.release('pot');
    await box.outbox.hurry();
    await box.settled();
    expect([...world.booked.keys()]).toEqual(['e0', 'other']);
    expect(box.outbox.snapshot().queue).toMatchObject([
      { id: 'pot', parked: { kind: 'refused' } },
      { id: 'move', parked: { kind: 'depends', on: 'pot' } },
    ]);
  });

  it('book once each though the answer to all of them is lost', async () => {
    const world = nursery();
    const box = await whileDown(world, many(5));
    world.line.loseAnswers = 2;
    await box.outbox.hurry();
    await box.settled();
    for (let round = 0; round < 4; round += 1) await box.pass(60_000);
    expect([...world.booked.keys()]).toEqual(many(5).map(({ id }) => id));
    expect(box.outbox.snapshot().queue).toEqual([]);
  });

  it('take no more bytes into one request than the server does', async () => {
    const world = nursery();
    const box = await whileDown(world, many(1));
    for (let at = 0; at < 5; at += 1)
      void box.outbox.enter({
        id: `big${at}`,
        name: 'stock.move',
        title: '',
        body: { note: 'ñ'.repeat(30 * 1024) },
        creates: [],
        from: '/',
      });
    await box.outbox.hurry();
    await box.settled();
    expect(world.requests).toEqual([['e0'], ['big0', 'big1'], ['big2', 'big3'], ['big4']]);
  });

  it('carry their file until they are answered', async () => {
    const storage = memoryStorage();
    const world = nursery();
    world.line.down = true;
    const box = tab(world.transport, storage);
    await box.outbox.signedInAs('ann');
    void box.outbox.enter(
      { id: 'photo', name: 'files.addPhoto', title: '', body: {}, creates: [], from: '/' },
      { bytes: new Blob(['a photo']) },
    );
    await box.settled();
    expect(await (await storage.bytesOf('photo'))?.text()).toBe('a photo');
    world.line.down = false;
    await box.outbox.hurry();
    expect(await storage.bytesOf('photo')).toBeNull();
  });
});
