// Reads as they are kept for a person, with a line, a clock and a database that the test holds.
import { QueryClient } from '@tanstack/react-query';
import { describe, expect, it } from 'vitest';
import { CommandError, NO_ANSWER } from '../api/failure.ts';
import { type KeptRead, KeptReads, mayBeKept } from './kept-reads.ts';

const DAY_MS = 86_400_000;
const LOT = [['stock', 'readLot'], { input: { lotId: 'l' }, type: 'query' }] as const;
const ME = [['people', 'me'], { type: 'query' }] as const;

const turn = () => new Promise<void>((resolve) => setTimeout(resolve));

/** What outlives a closed app. */
const device = () => ({ kept: new Map<string, KeptRead>(), owner: null as string | null });

function app(kept: ReturnType<typeof device>, { build = 'one', at = 0 } = {}) {
  const line = { down: false, slow: false, refuses: false, says: 'fresh' as unknown };
  let now = at;
  let timers: { at: number; run: () => void }[] = [];
  const held: (() => void)[] = [];
  const reads = new KeptReads({
    records: {
      get: async (key) => kept.kept.get(String(key)),
      put: async (key, read) => void kept.kept.set(String(key), read),
      clear: async () => kept.kept.clear(),
      sweep: async (before) => {
        for (const [key, read] of kept.kept) if (read.at < before) kept.kept.delete(key);
      },
    },
    owner: { read: () => kept.owner, write: (personId) => void (kept.owner = personId) },
    build,
    now: () => now,
    after: (ms, run) => void timers.push({ at: now + ms, run }),
    onShown: () => {},
  });
  const client = new QueryClient({
    defaultOptions: { queries: { retry: false, persister: reads.persister as never } },
  });
  const read = async (queryKey: readonly unknown[] = LOT) =>
    client
      .fetchQuery({
        queryKey,
        queryFn: async () => {
          if (line.slow) await new Promise<void>((resolve) => held.push(resolve));
          if (line.down) throw new CommandError(NO_ANSWER);
          if (line.refuses) throw new CommandError({ code: 'not-signed-in', class: 'access' });
          return line.says;
        },
      })
      .catch((error: unknown) => (error as CommandError).failure.code);
  const pass = async (ms: number) => {
    now += ms;
    const due = timers.filter((timer) => timer.at <= now);
    timers = timers.filter((timer) => timer.at > now);
    for (const { run } of due) run();
    await turn();
  };
  const answer = async () => {
    line.slow = false;
    for (const go of held.splice(0)) go();
    await turn();
  };
  const stateOf = (queryKey: readonly unknown[] = LOT) => client.getQueryState(queryKey);
  const signIn = (personId: string) => reads.ownedBy(personId, client.getQueryCache().getAll());
  return { line, reads, client, read, pass, answer, stateOf, signIn };
}

/** A device on which this person has read a lot with a line. */
async function afterReading(personId = 'ann') {
  const kept = device();
  const before = app(kept, { at: 1_000 });
  await before.read(ME);
  before.signIn(personId);
  await before.read();
  await turn();
  return kept;
}

describe('a read without an answer', () => {
  it('shows what was read last, with its instant', async () => {
    const { line, read, stateOf, reads } = app(await afterReading(), { at: DAY_MS });
    line.down = true;
    expect(await read()).toBe('fresh');
    await turn();
    expect(stateOf()?.dataUpdatedAt).toBe(1_000);
    expect(reads.isShown(JSON.stringify(LOT))).toBe(true);
  });

  it('knows who was signed in, though that was read before anybody was', async () => {
    const { line, read } = app(await afterReading());
    line.down = true;
    expect(await read(ME)).toBe('fresh');
  });

  it('shows what was kept after three seconds of silence, and what is new once it comes', async () => {
    const { line, read, pass, answer, stateOf, reads } = app(await afterReading());
    Object.assign(line, { slow: true, says: 'newer' });
    const first = read();
    await pass(2_999);
    expect(stateOf()?.data).toBeUndefined();
    await pass(1);
    expect(await first).toBe('fresh');
    await answer();
    await turn();
    expect(stateOf()?.data).toBe('newer');
    expect(reads.isShown(JSON.stringify(LOT))).toBe(false);
  });

  it('fails as ever where nothing was kept', async () => {
    const { line, read } = app(await afterReading());
    line.down = true;
    expect(await read([['stock', 'readLot'], { input: { lotId: 'other' } }])).toBe('no-answer');
  });

  it('fails where what was kept is older than a week, or of another build', async () => {
    const kept = await afterReading();
    for (const later of [app(kept, { at: 1_000 + 7 * DAY_MS }), app(kept, { build: 'two' })]) {
      later.line.down = true;
      expect(await later.read()).toBe('no-answer');
    }
  });
});

describe('a read with an answer', () => {
  it('is asked for first, and believed', async () => {
    const { line, read } = app(await afterReading());
    line.says = 'newer';
    expect(await read()).toBe('newer');
  });

  it('that refuses is believed, too', async () => {
    const { line, read } = app(await afterReading());
    line.refuses = true;
    expect(await read()).toBe('not-signed-in');
  });

  it('is left alone by what an update of the app reads', async () => {
    const kept = await afterReading();
    const later = app(kept, { build: 'two' });
    later.line.says = 'in another form';
    await later.read();
    const before = app(kept);
    before.line.down = true;
    expect(await before.read()).toBe('fresh');
  });
});

describe('what was read', () => {
  it('is gone when its person signs out', async () => {
    const kept = await afterReading();
    app(kept).reads.forget();
    expect([kept.kept.size, kept.owner]).toEqual([0, null]);
    const { line, read } = app(kept);
    line.down = true;
    expect(await read()).toBe('no-answer');
  });

  it('is gone when somebody else signs in, and theirs is kept', async () => {
    const kept = await afterReading();
    const { line, read, signIn } = app(kept);
    line.says = 'of ben';
    await read(ME);
    signIn('ben');
    await turn();
    expect([...kept.kept.values()].map(({ data }) => data)).toEqual(['of ben']);
    expect([...kept.kept.keys()].every((key) => key.startsWith('ben,'))).toBe(true);
  });

  it('is not kept for the next person where its answer comes late', async () => {
    const kept = await afterReading();
    const { line, read, signIn, answer } = app(kept);
    Object.assign(line, { slow: true, says: 'of ann' });
    const late = read([['stock', 'listLots'], {}]);
    signIn('ben');
    await answer();
    await late;
    expect(kept.kept.size).toBe(0);
  });

  it('stays where another person’s tab is told to forget theirs', async () => {
    const kept = await afterReading();
    app(kept).reads.forget('ben');
    expect(kept.kept.size).toBe(2);
  });

  it('is swept after a week', async () => {
    const kept = await afterReading();
    await app(kept, { at: 7 * DAY_MS }).reads.sweep();
    expect(kept.kept.size).toBe(2);
    await app(kept, { at: 8 * DAY_MS }).reads.sweep();
    expect(kept.kept.size).toBe(0);
  });

  it.each([
    ['people', 'listSessions'],
    ['people', 'readCalendarAddress'],
    ['people', 'readSecondStep'],
    ['people', 'listPeople'],
    ['people', 'setupState'],
  ])('is never kept of %s.%s', (...path) => {
    expect(mayBeKept([path, { type: 'query' }])).toBe(false);
  });
});
