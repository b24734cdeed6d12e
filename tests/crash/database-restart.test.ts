// A given PostgreSQL that is restarted while people work: nothing that was acknowledged is lost, and everybody soon hears of changes again.
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createDatabase, ensureServerLogin } from '@rootclock/server/db/databases';
import { checkLaws } from '@rootclock/server/db/check';
import { startEmbedded, type EmbeddedServer } from '@rootclock/server/db/embedded';
import { migrate } from '@rootclock/server/db/migrate';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Line, openLine } from '../support/process/cut-line.ts';
import { hear } from '../support/process/hearing.ts';
import { command, must, send } from '../support/process/http-nursery.ts';
import { endAllServers, startServer, type ServerProcess } from '../support/process/server-process.ts';

const CLIENTS = 6;
const RESTARTS = 3;
/** So many entries are acknowledged before each restart, and so many after it. */
const ENTRIES = 30;
const BACK_WITHIN_MS = 20_000;
const NAME = 'rootclock';

let folder: string;
let postgres: EmbeddedServer;
let line: Line;
let server: ServerProcess;
let address: string;
let cookie: string;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'rootclock restarted '));
  postgres = await startEmbedded(path.join(folder, 'pg'));
  await createDatabase(postgres.url('postgres'), NAME);
  await migrate(postgres.url(NAME));
  line = await openLine(await ensureServerLogin(postgres.url(NAME)));
  server = startServer({
    DATA_DIR: path.join(folder, 'data'),
    DATABASE_URL: line.url,
    DATABASE_OWNER_URL: postgres.url(NAME),
  });
  address = await server.address;
  const owner = {
    nurseryName: 'Kept',
    zone: 'America/Chicago',
    name: 'Ada Moor',
    email: 'ada@example.test',
    password: 'ten characters',
  };
  cookie = (await must(address, '', command('people.createFirstOwner', owner))).cookie;
});
afterAll(async () => {
  await endAllServers();
  await line.close();
  await postgres.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function restart(): Promise<void> {
  await postgres.stop();
  postgres = await startEmbedded(path.join(folder, 'pg'));
  const url = new URL(line.url);
  url.port = String(postgres.port);
  line.leadTo(url.href);
}

async function sql<Row extends pg.QueryResultRow>(text: string): Promise<Row[]> {
  const client = new pg.Client({ connectionString: postgres.url(NAME) });
  await client.connect();
  try {
    return (await client.query<Row>(text)).rows;
  } finally {
    await client.end();
  }
}

describe(`of ${CLIENTS} clients at work while their PostgreSQL is restarted ${RESTARTS} times`, () => {
  test('nothing acknowledged is lost, nothing is booked twice, and changes are heard again within twenty seconds', async () => {
    const heard = await hear(address, cookie);
    const acknowledged: string[] = [];
    const refused: string[] = [];
    const work = new AbortController();
    // Each client does what an outbox does: one entry after the other, and the same again until it is answered.
    const clients = Array.from({ length: CLIENTS }, async () => {
      while (!work.signal.aborted) {
        const placeId = randomUUID();
        const entry = command('stock.addPlace', { placeId, code: placeId.slice(0, 12), kind: 'bench' });
        for (;;) {
          const outcome = await send(address, cookie, entry);
          if (outcome.kind === 'unknown') continue;
          if (outcome.kind === 'refused') refused.push(outcome.code);
          else acknowledged.push(placeId);
          break;
        }
      }
    });
    const waits: number[] = [];
    for (let round = 0; round < RESTARTS; round++) {
      const before = acknowledged.length;
      await expect.poll(() => acknowledged.length).toBeGreaterThan(before + ENTRIES);
      await restart();
      const upAt = performance.now();
      const known = heard.words.length;
      // A change that names its features came by the listening connection; a beat alone would name none.
      await expect
        .poll(() => heard.words.slice(known).some(({ features }) => features?.includes('stock')), {
          timeout: BACK_WITHIN_MS,
        })
        .toBe(true);
      waits.push(performance.now() - upAt);
    }
    work.abort();
    await Promise.all(clients);
    expect(refused).toEqual([]);
    expect(Math.max(...waits)).toBeLessThan(BACK_WITHIN_MS);
    const stored = (await sql<{ id: string }>('SELECT id::text FROM place')).map(({ id }) => id);
    expect(acknowledged.filter((id) => !stored.includes(id))).toEqual([]);
    expect(stored).toHaveLength(acknowledged.length);
    expect((await checkLaws(postgres.url(NAME))).breaches).toEqual([]);
    const [listening] = await sql<{ n: number }>(
      `SELECT count(*)::int AS n FROM pg_stat_activity WHERE application_name = 'rootclock live'`,
    );
    expect(listening).toEqual({ n: 1 });
    heard.close();
  }, 600_000);
});
