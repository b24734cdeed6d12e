// The day of each nursery is rolled soon after its own midnight, whoever writes or does not.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { DayTimer } from '../../../apps/server/src/db/day-timer.ts';
import { openDatabase } from '../../../apps/server/src/db/pool.ts';
import { createRunner } from '../../../apps/server/src/db/runner.ts';
import { foreseeRoll, replan, rollDay } from '../../../apps/server/src/features/replan.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer } from '../../support/nursery.ts';
import { openLine } from '../../support/process/cut-line.ts';
import { hear } from '../../support/process/hearing.ts';
import { cookieOf } from '../../support/session.ts';

type Server = Awaited<ReturnType<typeof openServer>>;

let database: TestDatabase;
let server: Server;
let nurseries: Record<string, Awaited<ReturnType<Server['addNursery']>>>;

beforeEach(async () => {
  database = await createDatabase();
  server = await openServer(database);
  nurseries = {};
  // From west to east: their midnights lie up to a day apart.
  for (const zone of ['Pacific/Honolulu', 'America/Chicago', 'Europe/Berlin', 'Pacific/Auckland'])
    nurseries[zone] = await server.addNursery({ zone });
});
afterEach(async () => {
  await server.close();
  await database.drop();
});

/** A timer whose waiting the test ends: `look` lets it look once and answers how long it then wants to wait. */
function timerOn(parts: Pick<Server, 'runner'> & { database: Server['app'] }) {
  let waiting: (() => void) | null = null;
  let asked: (ms: number) => void = () => {};
  const failures: unknown[] = [];
  const timer = new DayTimer({
    ...parts,
    chance: () => 0,
    failed: (error) => void failures.push(error),
    after: (ms, run) => {
      waiting = run;
      asked(ms);
      return () => void (waiting = null);
    },
  });
  timer.start();
  const look = () =>
    new Promise<number>((resolve) => {
      asked = resolve;
      waiting?.();
    });
  return { timer, look, failures, isWaiting: () => waiting !== null };
}

async function rolled(): Promise<Record<string, string | null>> {
  const rows = await server.sql<{ zone: string; day: string | null }>(
    'SELECT zone, rolled_on::text AS day FROM nursery',
  );
  return Object.fromEntries(rows.map(({ zone, day }) => [zone, day]));
}

const rolls = async () =>
  (await server.sql<{ n: number }>(`SELECT count(*)::int AS n FROM command WHERE name = 'roll-day'`))[0]?.n;

describe('the timer of days', () => {
  test('rolls each nursery after the midnight of its own zone, and no other', async () => {
    const { look, failures } = timerOn({ database: server.app, runner: server.runner });
    server.clock.set('2026-05-20T09:00:00Z');
    await look();
    expect(await rolled()).toEqual({
      'Pacific/Honolulu': '2026-05-19',
      'America/Chicago': '2026-05-20',
      'Europe/Berlin': '2026-05-20',
      'Pacific/Auckland': '2026-05-20',
    });
    server.clock.set('2026-05-20T11:59:00Z');
    // Two hours past midnight in Honolulu, one minute before it in Auckland.
    expect(await look()).toBe(60_000);
    server.clock.set('2026-05-20T12:00:30Z');
    await look();
    expect(await rolled()).toEqual({
      'Pacific/Honolulu': '2026-05-20',
      'America/Chicago': '2026-05-20',
      'Europe/Berlin': '2026-05-20',
      'Pacific/Auckland': '2026-05-21',
    });
    expect(failures).toEqual([]);
  });

  test('waits until the next midnight where it is near', async () => {
    const { look } = timerOn({ database: server.app, runner: server.runner });
    server.clock.set('2026-05-21T04:58:30Z');
    expect(await look()).toBe(90_000);
    server.clock.set('2026-05-21T05:00:00Z');
    await look();
    expect((await rolled())['America/Chicago']).toBe('2026-05-21');
  });

  test('looks after promises that a server left to be solved when it ended', async () => {
    const { look, failures } = timerOn({ database: server.app, runner: server.runner });
    await look();
    const berlin = nurseries['Europe/Berlin']?.nurseryId;
    await server.sql('UPDATE nursery SET plan_stale_since = $2 WHERE id = $1', [berlin, server.clock.now()]);
    const stale = () => server.sql('SELECT 1 FROM nursery WHERE plan_stale_since IS NOT NULL');
    expect(await stale()).toHaveLength(1);
    await look();
    await server.runner.plans.settled();
    expect(await stale()).toEqual([]);
    expect(failures).toEqual([]);
  });

  test('rolls a day once, however many servers do it at the same moment', async () => {
    const others = Array.from({ length: 3 }, () => openDatabase(database.url));
    const timers = others.map((other) =>
      timerOn({
        database: other,
        runner: createRunner({ database: other, replan, rollDay, foreseeRoll, clock: server.clock.now }),
      }),
    );
    for (let day = 20; day < 24; day++) {
      server.clock.set(`2026-05-${day}`);
      await Promise.all(timers.map(({ look }) => look()));
      expect(await rolls()).toBe(4 * (day - 19));
    }
    expect(timers.flatMap(({ failures }) => failures)).toEqual([]);
    for (const other of others) await other.close();
  });

  test('goes on when the database is back, and says once that it was away', async () => {
    const line = await openLine(database.url);
    const away = openDatabase(line.url);
    const runner = createRunner({ database: away, replan, rollDay, foreseeRoll, clock: server.clock.now });
    const { look, failures } = timerOn({ database: away, runner });
    line.behave('refuses');
    const pauses = [await look(), await look(), await look()];
    expect(pauses).toEqual([1_000, 2_000, 4_000]);
    expect(failures).toHaveLength(1);
    line.behave('passes');
    await look();
    expect(Object.values(await rolled())).not.toContain(null);
    await away.close();
    await line.close();
  });

  test('lets no nursery wait for one that cannot be rolled', async () => {
    const chicago = nurseries['America/Chicago']?.nurseryId;
    await server.sql('UPDATE nursery SET zone = $2 WHERE id = $1', [chicago, 'Nowhere/AtAll']);
    const { look, failures } = timerOn({ database: server.app, runner: server.runner });
    await look();
    expect(failures).toHaveLength(1);
    expect(Object.entries(await rolled()).filter(([, day]) => day === null)).toEqual([['Nowhere/AtAll', null]]);
  });

  test('holds no connection while it waits, and none and no timer after it was stopped', async () => {
    const one = openDatabase(database.url, { connections: 1 });
    const { timer, look, isWaiting } = timerOn({
      database: one,
      runner: createRunner({ database: one, replan, rollDay, foreseeRoll, clock: server.clock.now }),
    });
    await look();
    // Its pool has a single connection: this would wait for ever if the timer kept it.
    expect(await one.run`SELECT 1`).toBe(1);
    expect(isWaiting()).toBe(true);
    timer.stop();
    expect(isWaiting()).toBe(false);
    await one.close();
  });

  test('works in the server itself, and browsers hear of it', async () => {
    const nursery = nurseries['Europe/Berlin'] as NonNullable<(typeof nurseries)[string]>;
    const app = await createApp({ databaseUrl: database.url, clock: server.clock.now, rollsDays: true });
    const address = await app.listen({ host: '127.0.0.1', port: 0 });
    const heard = await hear(address, await cookieOf(nursery, 'viewer'));
    await expect.poll(async () => Object.values(await rolled()).includes(null)).toBe(false);
    await expect.poll(() => heard.words.at(-1)?.version).toBe(1);
    heard.close();
    await app.close();
  });
});
