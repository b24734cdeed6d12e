// `rootclock backup` beside a server at work, and `rootclock restore` of what it wrote, as people run them.
import { cpSync, existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { databaseAddress } from '@rootclock/server/db/embedded/cluster';
import { holderOf } from '@rootclock/server/db/embedded/folder-lock';
import { checkLaws } from '@rootclock/server/db/check';
import type pg from 'pg';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { asOwner, rowsOf } from '../support/backup.ts';
import { rootclock } from '../support/process/command-line.ts';
import { command, must, send } from '../support/process/http-nursery.ts';
import { endAllServers, processesOn, startServer } from '../support/process/server-process.ts';

const CLIENTS = 4;

let parent: string;
let file: string;
const folder = (name: string) => path.join(parent, name);
beforeEach(() => {
  parent = mkdtempSync(path.join(tmpdir(), 'rootclock kept '));
  file = path.join(parent, 'backup.tar.gz');
});
afterEach(async () => {
  await endAllServers();
  rmSync(parent, { recursive: true, force: true });
});

const run = (dataDir: string, ...args: string[]) => rootclock(args, { env: { DATA_DIR: dataDir } });
const ownerUrl = (dataDir: string) => databaseAddress(dataDir, holderOf(dataDir)?.databasePort as number, 'rootclock');

const sql = <Row extends pg.QueryResultRow>(dataDir: string, text: string): Promise<Row[]> =>
  asOwner(ownerUrl(dataDir), async (client) => (await client.query<Row>(text)).rows);

async function firstOwner(address: string): Promise<string> {
  const owner = { nurseryName: 'Kept', zone: 'America/Chicago', name: 'Ada Moor', email: 'ada@example.test' };
  return (await must(address, '', command('people.createFirstOwner', { ...owner, password: 'ten characters' }))).cookie;
}

/** Its day is rolled already, so that a server that starts writes nothing of its own. */
const NURSERY = `INSERT INTO nursery (id, name, zone, season_end_on, rolled_on) VALUES (gen_random_uuid(), 'Kept', 'America/Chicago', '2027-10-31', '2999-01-01')`;

/** Many rows of another nursery, so that taking a backup is not over in a blink. */
const MANY = `
  WITH other AS (INSERT INTO nursery (id, name, zone, season_end_on, version)
    VALUES (gen_random_uuid(), 'Elsewhere', 'America/Chicago', '2027-10-31', 100000) RETURNING id)
  INSERT INTO command (nursery_id, id, version, name, input_hash, answer, recorded_at)
  SELECT other.id, gen_random_uuid(), n, 'addPlace', md5(n::text), '{}', '2026-05-20' FROM other, generate_series(1, 100000) n`;

/** Clients that write one entry after the other until they are told to stop. Answers when the first entries are in. */
function workAt(address: string, cookie: string) {
  const stopping = new AbortController();
  const done: string[] = [];
  const clients = Array.from({ length: CLIENTS }, async (_, client) => {
    for (let count = 0; !stopping.signal.aborted; count++) {
      const code = `P${client}-${count}`;
      const place = command('stock.addPlace', { placeId: crypto.randomUUID(), code, kind: 'bench' });
      const outcome = await send(address, cookie, place);
      if (outcome.kind !== 'done') throw new Error(`${code} was ${outcome.kind}`);
      done.push(place.id);
    }
  });
  return {
    done,
    async stop() {
      stopping.abort();
      await Promise.all(clients);
    },
  };
}

describe('rootclock backup and restore', () => {
  test('hold one moment of a nursery at work, whose work goes on meanwhile', async () => {
    const [from, to] = [folder('from'), folder('to')];
    const server = startServer({ DATA_DIR: from });
    const address = await server.address;
    const cookie = await firstOwner(address);
    await sql(from, MANY);

    const work = workAt(address, cookie);
    await expect.poll(() => work.done.length).toBeGreaterThan(CLIENTS);
    const before = [...work.done];
    const taken = await run(from, 'backup', file);
    const after = [...work.done];
    await work.stop();
    expect(taken.err).toBe('');
    expect(taken.out).toMatch(/^Taking a backup[\s\S]*Wrote .*backup\.tar\.gz: \d+ tables, \d+ rows, 0 files, /);
    expect(taken.code).toBe(0);

    const back = await run(to, 'restore', file);
    expect(back.err).toBe('');
    expect(back.out).toMatch(/The backup is whole[\s\S]*All \d+ laws hold\.\nRestored\. Everybody signs in anew\.\n$/);
    expect(back.code).toBe(0);
    expect(processesOn(to)).toEqual([]);

    await startServer({ DATA_DIR: to }).address;
    expect((await checkLaws(ownerUrl(to))).breaches).toEqual([]);
    const kept = (
      await sql<{ id: string }>(to, `SELECT id FROM command WHERE name = 'addPlace' AND person_id IS NOT NULL`)
    ).map(({ id }) => id);
    expect(before.filter((id) => !kept.includes(id))).toEqual([]);
    // What came in while it was taken shows that nobody waited for it; one moment means that it is a beginning of all.
    expect(after.length - before.length).toBeGreaterThan(CLIENTS);
    const [{ version } = { version: '' }] = await sql<{ version: string }>(
      to,
      `SELECT version FROM nursery WHERE name = 'Kept'`,
    );
    const story = (dataDir: string) =>
      sql(
        dataDir,
        `SELECT c::text AS command FROM command c JOIN nursery n ON n.id = c.nursery_id AND n.name = 'Kept'
          WHERE c.version <= ${version} ORDER BY c.version`,
      );
    expect(await story(to)).toEqual(await story(from));
    const places = async (dataDir: string) =>
      (await sql<{ place: string }>(dataDir, 'SELECT p::text AS place FROM place p')).map(({ place }) => place);
    const written = new Set(await places(from));
    expect((await places(to)).filter((place) => !written.has(place))).toEqual([]);
    expect(await places(to)).toHaveLength(kept.length);
  }, 600_000);

  test('work without a server too, say in a sentence what they refuse, and leave what is there alone', async () => {
    const [from, to] = [folder('from'), folder('to')];
    const server = startServer({ DATA_DIR: from });
    await server.address;
    await sql(from, NURSERY);
    const rows = await rowsOf(ownerUrl(from));

    expect(await run(to, 'restore', file)).toMatchObject({
      code: 1,
      err: expect.stringMatching(/^Rootclock: .*ENOENT/),
    });
    expect(await run(from, 'backup')).toMatchObject({
      code: 1,
      err: expect.stringMatching(/^Rootclock: Say where to/),
    });
    const held = expect.stringMatching(/^Rootclock: The data folder .* is held by process \d+/);
    expect((await run(from, 'backup', file)).code).toBe(0);
    expect(await run(from, 'restore', file)).toMatchObject({ code: 1, err: held });
    server.signal('SIGTERM');
    await server.ended;

    expect(await run(from, 'backup', file)).toMatchObject({ code: 1, err: expect.stringMatching(/is there already/) });
    rmSync(file);
    expect((await run(from, 'backup', file)).code).toBe(0);
    const filled = expect.stringMatching(/^Rootclock: There is a nursery here already \(Kept\)/);
    expect(await run(from, 'restore', file)).toMatchObject({ code: 1, err: filled });
    const copy = folder('copy');
    cpSync(from, copy, { recursive: true });
    writeFileSync(file, 'no backup any more');
    expect(await run(to, 'restore', file)).toMatchObject({
      code: 1,
      err: expect.stringMatching(/no backup of Rootclock/),
    });
    expect(existsSync(to)).toBe(false);

    await startServer({ DATA_DIR: copy }).address;
    expect(await rowsOf(ownerUrl(copy))).toEqual(rows);
  }, 600_000);

  test('replace a nursery’s database that is still empty', async () => {
    const [from, to] = [folder('from'), folder('to')];
    await startServer({ DATA_DIR: from }).address;
    await sql(from, NURSERY);
    const other = startServer({ DATA_DIR: to });
    await other.address;
    other.signal('SIGTERM');
    await other.ended;
    expect((await run(from, 'backup', file)).code).toBe(0);
    expect((await run(to, 'restore', file)).code).toBe(0);
    await startServer({ DATA_DIR: to }).address;
    expect(await sql(to, 'SELECT name FROM nursery')).toEqual([{ name: 'Kept' }]);
  }, 600_000);
});
