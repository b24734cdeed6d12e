// The one connection that hears of changes, whatever becomes of the database: too many at its door, away, silent, back again.
import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { type Line, openLine } from '../../support/process/cut-line.ts';
import { hear } from '../../support/process/hearing.ts';
import { cookieOf } from '../../support/session.ts';

let database: TestDatabase;
let nursery: TestNursery;
let line: Line;
let app: Awaited<ReturnType<typeof createApp>>;
let address: string;

beforeEach(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  line = await openLine(database.url);
  app = await createApp({ databaseUrl: line.url, clock: nursery.clock.now });
  address = await app.listen({ host: '127.0.0.1', port: 0 });
});
afterEach(async () => {
  line.behave('passes');
  await app.close();
  await line.close();
  await nursery.close();
  await database.drop();
});

/** The connections of this database that listen, as PostgreSQL itself sees them. */
async function listeners(): Promise<number[]> {
  const rows = await nursery.sql<{ pid: number }>(
    `SELECT pid FROM pg_stat_activity WHERE datname = current_database() AND application_name = 'rootclock live'`,
  );
  return rows.map(({ pid }) => pid);
}

const addPlace = () =>
  nursery
    .as('grower')
    .stock.addPlace(sent({ placeId: randomUUID(), code: `B-${randomUUID().slice(0, 8)}`, kind: 'bench' as const }));

/** Somebody's entry is heard by the page that was opened, within the time in which a server has to be back. */
async function expectHeard(heard: Awaited<ReturnType<typeof hear>>): Promise<void> {
  await addPlace();
  const [{ version } = { version: 0 }] = await nursery.sql<{ version: number }>(
    'SELECT version::int FROM nursery WHERE id = $1',
    [nursery.nurseryId],
  );
  await expect.poll(() => heard.words.at(-1)?.version, { timeout: 20_000 }).toBe(version);
}

describe('the listening connection', () => {
  test('tries a door that refuses at most 15 times in 15 seconds', async () => {
    line.behave('refuses');
    const before = line.tried();
    await new Promise((resolve) => setTimeout(resolve, 15_000));
    const tried = line.tried() - before;
    expect(tried).toBeLessThanOrEqual(15);
    expect(tried).toBeGreaterThanOrEqual(3);
  });

  test('is one and only one after it was cut off several times, and hears again', async () => {
    const heard = await hear(address, await cookieOf(nursery, 'viewer'));
    for (let round = 0; round < 4; round++) {
      const [before] = await listeners();
      await nursery.sql('SELECT pg_terminate_backend($1)', [before]);
      await expect
        .poll(async () => (await listeners()).filter((pid) => pid !== before), { timeout: 20_000 })
        .toHaveLength(1);
      await expectHeard(heard);
    }
    expect(await listeners()).toHaveLength(1);
    heard.close();
  });

  test('comes back when the connections of the database were used up and are free again, and is one', async () => {
    const heard = await hear(address, await cookieOf(nursery, 'viewer'));
    const name = pg.escapeIdentifier(new URL(database.url).pathname.slice(1));
    for (let round = 0; round < 2; round++) {
      await nursery.sql(`ALTER DATABASE ${name} CONNECTION LIMIT 0`);
      await nursery.sql('SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid = ANY ($1)', [
        await listeners(),
      ]);
      const before = line.tried();
      // The second round begins where the first left off, with pauses of up to 8 s each.
      await expect.poll(() => line.tried() - before, { timeout: 40_000 }).toBeGreaterThanOrEqual(2);
      expect(await listeners()).toEqual([]);
      await nursery.sql(`ALTER DATABASE ${name} CONNECTION LIMIT -1`);
      await expect.poll(listeners, { timeout: 20_000 }).toHaveLength(1);
      await expectHeard(heard);
    }
    expect(await listeners()).toHaveLength(1);
    heard.close();
  });

  test('notices a line on which nothing comes any more, and tells what was missed meanwhile', async () => {
    const heard = await hear(address, await cookieOf(nursery, 'viewer'));
    const known = heard.words.at(-1)?.version ?? 0;
    line.behave('hangs');
    await addPlace();
    // The next try goes out only once the silence was noticed.
    const before = line.tried();
    await expect.poll(() => line.tried() - before, { timeout: 20_000 }).toBeGreaterThanOrEqual(1);
    line.behave('passes');
    await expect.poll(() => heard.words.at(-1)?.version, { timeout: 20_000 }).toBeGreaterThan(known);
    await expectHeard(heard);
    heard.close();
  });

  test('ignores notifications that are not of ours', async () => {
    // The day's roll, which precedes the first entry, would be a word of its own.
    await addPlace();
    const heard = await hear(address, await cookieOf(nursery, 'viewer'));
    const known = heard.words.length;
    const id = nursery.nurseryId;
    const odd = [
      '',
      'no json',
      '{',
      'null',
      '7',
      '"x"',
      '[]',
      '{}',
      `{"nursery":"${id}"}`,
      `{"nursery":"${id}","version":"9","features":[]}`,
      `{"nursery":"${id}","version":1.5,"features":[]}`,
      `{"nursery":"${id}","version":-1,"features":[]}`,
      `{"nursery":"${id}","version":9,"features":"stock"}`,
      `{"nursery":"${id}","version":9,"features":[7]}`,
      `{"nursery":"no uuid","version":9,"features":[]}`,
      `{"nursery":"${id}","person":7}`,
      `{"nursery":"${id}","version":9,"features":${JSON.stringify(Array.from({ length: 500 }, () => 'stock'))}}`,
    ];
    for (const payload of odd) await nursery.sql('SELECT pg_notify($1, $2)', ['rootclock', payload]);
    await expectHeard(heard);
    expect(heard.words.slice(known).map(({ features }) => features)).toEqual([expect.arrayContaining(['stock'])]);
    heard.close();
  });
});
