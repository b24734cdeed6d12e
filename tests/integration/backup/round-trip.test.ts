import { createHash, randomUUID } from 'node:crypto';
import { readdirSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { LEFT_OUT } from '@rootclock/server/db/backup/left-out';
import { checkLaws } from '@rootclock/server/db/check';
import { migrate, readMigrations } from '@rootclock/server/db/migrate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openStory, type Story, TODAY } from '../../history/story.ts';
import { asOwner, bringBack, openScratch, rowsOf, rulesOf, type Scratch, take } from '../../support/backup.ts';
import { idOf, openServer, sent } from '../../support/nursery.ts';

let story: Story;
let scratch: Scratch;
beforeEach(async () => {
  story = await openStory();
  scratch = await openScratch();
});
afterEach(async () => {
  await scratch.close();
  await story.close();
});

/** Stock that was lost, ordered and promised, so that most tables hold something. */
async function work(): Promise<string> {
  const lotId = await story.addLot(60);
  await story.by(0).orders.addOrder(story.orderOf(idOf('order'), idOf('line'), 20));
  await story
    .by(1)
    .stock.loseFromLot(sent({ lotId, placeId: story.placeIds[0], units: 3, cause: 'weather', happenedOn: TODAY }));
  return lotId;
}

describe('a backup that is brought back', () => {
  test('holds every row, under the same rules, and keeps all laws', async () => {
    await work();
    const manifest = await take(story.database.ownerUrl, scratch);
    const target = await scratch.emptyDatabase();
    await bringBack(target, scratch, scratch.filesFolder);

    const rows = await rowsOf(target);
    expect(rows).toEqual(await rowsOf(story.database.ownerUrl));
    expect(rows.movement?.length).toBeGreaterThan(0);
    expect(rows.reservation?.length).toBeGreaterThan(0);
    expect(manifest.tables.map(({ name, rows: count }) => [name, count])).toEqual(
      Object.keys(rows)
        .filter((name) => LEFT_OUT[name]?.kept !== 'false')
        .map((name) => [name, rows[name]?.length]),
    );
    expect(await rulesOf(target)).toEqual(await rulesOf(story.database.ownerUrl));
    expect(await checkLaws(target)).toMatchObject({ breaches: [], looked: { nurseries: 1, lots: 1 } });
  });

  test('goes on where it stood: the same command takes effect once, the next one is booked', async () => {
    const lotId = await work();
    const loss = sent({ lotId, placeId: story.placeIds[0], units: 2, cause: 'weather' as const, happenedOn: TODAY });
    const answer = await story.by(0).stock.loseFromLot(loss);
    await take(story.database.ownerUrl, scratch);
    const target = await scratch.emptyDatabase();
    await bringBack(target, scratch, scratch.filesFolder);

    const server = await openServer({ ownerUrl: target, url: within(story.database.url, target) });
    try {
      const [person] = await server.sql<{ person_id: string }>(`SELECT person_id FROM membership WHERE role = 'owner'`);
      const caller = { nurseryId: story.nurseryId, personId: person?.person_id ?? '', personName: 'Test owner' };
      const owner = { ...caller, email: 'owner@example.test', role: 'owner' as const };
      const by = server.serve({ owner, grower: owner, crew: owner, viewer: owner })('owner');
      expect(await by.stock.loseFromLot(loss)).toEqual(answer);
      await by.stock.loseFromLot(sent({ ...loss.body, units: 1 }));
      const [on] = await server.sql(`SELECT sum(units)::int AS units FROM account WHERE kind = 'place'`);
      expect(on).toEqual({ units: 60 - 3 - 2 - 1 });
      expect((await checkLaws(target)).breaches).toEqual([]);
    } finally {
      await server.close();
    }
  });

  test('ends all sessions and keeps calendars', async () => {
    const token = (kind: string) =>
      story.sql(
        `INSERT INTO token (hash, kind, nursery_id, person_id, created_at, expires_at)
         SELECT $1, $2, nursery_id, person_id, '2026-05-01', '2027-05-01' FROM membership WHERE role = 'crew'`,
        [createHash('sha256').update(kind).digest(), kind],
      );
    for (const kind of ['session', 'device', 'calendar']) await token(kind);
    await take(story.database.ownerUrl, scratch);
    const target = await scratch.emptyDatabase();
    await bringBack(target, scratch, scratch.filesFolder);
    const kept = await asOwner(target, (client) => client.query('SELECT kind FROM token'));
    expect(kept.rows).toEqual([{ kind: 'calendar' }]);
  });

  test('comes into a database that a plain owner has, who may not switch triggers off for a session', async () => {
    await work();
    await take(story.database.ownerUrl, scratch);
    const target = new URL(await scratch.emptyDatabase());
    const [name, password] = [`owner_${randomUUID().slice(0, 8)}`, randomUUID()];
    await asOwner(target.href, async (client) => {
      await client.query(`CREATE ROLE ${name} LOGIN NOSUPERUSER PASSWORD '${password}'`);
      await client.query(`GRANT rootclock_app TO ${name}`);
      await client.query(`ALTER DATABASE ${target.pathname.slice(1)} OWNER TO ${name}`);
    });
    const plain = new URL(target);
    Object.assign(plain, { username: name, password });
    await bringBack(plain.href, scratch, scratch.filesFolder);
    expect(await rowsOf(plain.href)).toEqual(await rowsOf(story.database.ownerUrl));
    await asOwner(target.href, async (client) => {
      await client.query(`ALTER DATABASE ${target.pathname.slice(1)} OWNER TO CURRENT_USER`);
      await client.query(`REASSIGN OWNED BY ${name} TO CURRENT_USER`);
      await client.query(`DROP OWNED BY ${name}`);
      await client.query(`DROP ROLE ${name}`);
    });
  });
});

describe('a backup from before the newest migrations', () => {
  const all = readMigrations();
  const older = all.slice(
    0,
    all.findIndex(({ name }) => name.startsWith('20261129')),
  );

  test('is brought back and migrated on', async () => {
    const source = await scratch.emptyDatabase();
    await migrate(source, older);
    await asOwner(source, (client) =>
      client.query(
        `INSERT INTO nursery (id, name, zone, season_end_on) VALUES (gen_random_uuid(), 'Kept', 'America/Chicago', '2027-10-31')`,
      ),
    );
    await take(source, scratch);
    const target = await scratch.emptyDatabase();
    await bringBack(target, scratch, scratch.filesFolder);
    expect((await rowsOf(target)).nursery).toEqual([expect.stringContaining('Kept')]);
    expect(await migrate(target)).toEqual([]);
    expect((await checkLaws(target)).breaches).toEqual([]);
  });

  test('is refused by an empty database that is newer', async () => {
    const source = await scratch.emptyDatabase();
    await migrate(source, older);
    await take(source, scratch);
    const target = await scratch.emptyDatabase();
    await migrate(target);
    await expect(bringBack(target, scratch, scratch.filesFolder)).rejects.toThrow(/empty but newer than the backup/);
  });
});

describe('the file', () => {
  test('is for its owner alone, and nothing else is left beside it', async () => {
    await take(story.database.ownerUrl, scratch);
    expect(statSync(scratch.file).mode & 0o777).toBe(0o600);
    expect(readdirSync(scratch.folder)).toEqual([path.basename(scratch.file)]);
  });

  test('is never written over another', async () => {
    writeFileSync(scratch.file, 'kept');
    await expect(take(story.database.ownerUrl, scratch)).rejects.toThrow(/is there already/);
    expect(statSync(scratch.file).size).toBe(4);
  });

  test('is not there at all when the backup is broken off', async () => {
    const broken = new AbortController();
    broken.abort(new Error('broken off'));
    await expect(take(story.database.ownerUrl, scratch, broken.signal)).rejects.toThrow('broken off');
    expect(readdirSync(scratch.folder)).toEqual([]);
  });
});

test('what is left out names tables that there are, each with its reason', async () => {
  const tables = Object.keys(await rowsOf(story.database.ownerUrl));
  expect(Object.keys(LEFT_OUT).filter((name) => !tables.includes(name))).toEqual([]);
  expect(Object.values(LEFT_OUT).filter(({ why }) => why.length < 20)).toEqual([]);
});

function within(address: string, other: string): string {
  const url = new URL(address);
  url.pathname = new URL(other).pathname;
  return url.href;
}
