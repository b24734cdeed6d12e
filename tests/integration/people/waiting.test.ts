// Writes that wait for the nursery while the person who sent them is removed or given another role, and calendar addresses asked for at once.
import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let holder: pg.Client;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  holder = new pg.Client({ connectionString: database.ownerUrl });
  await holder.connect();
});
afterAll(async () => {
  await holder.end();
  await nursery.close();
  await database.drop();
});

/** Runs `change` while a write waits for the nursery's lock, which is held until the change is made. */
async function whileWaiting<Answer>(write: () => Promise<Answer>, change: string, values: unknown[]): Promise<Answer> {
  await holder.query('BEGIN');
  await holder.query('UPDATE nursery SET version = version WHERE id = $1', [nursery.nurseryId]);
  const written = write();
  written.catch(() => undefined);
  await expect
    .poll(
      async () =>
        (
          await nursery.sql(
            `SELECT FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'`,
          )
        ).length,
      { timeout: 10_000 },
    )
    .toBe(1);
  await holder.query(change, values);
  await holder.query('COMMIT');
  return written;
}

const nameOfNursery = async () =>
  (await nursery.sql<{ name: string }>('SELECT name FROM nursery WHERE id = $1', [nursery.nurseryId]))[0]?.name;
const settings = (name: string) =>
  sent({ name, zone: 'America/Denver', region: null, units: 'us' as const, noticeDays: 30, seasonEndOn: '2026-11-15' });

describe('a write that waits for the nursery', () => {
  test('is not done when its person is removed meanwhile', async () => {
    const work = whileWaiting(
      () => nursery.as('owner').people.editNursery(settings('Written by nobody')),
      'UPDATE membership SET ended_at = $2 WHERE person_id = $1',
      [nursery.people.owner.personId, nursery.clock.now()],
    );
    expect(await refusalOf(work)).toMatchObject({ code: 'not-signed-in' });
    expect(await nameOfNursery()).toBe('Test nursery');
    await nursery.sql('UPDATE membership SET ended_at = NULL WHERE person_id = $1', [nursery.people.owner.personId]);
  });

  test('is not done when its person is given a role that may not', async () => {
    const work = whileWaiting(
      () => nursery.as('owner').people.editNursery(settings('Written by a viewer')),
      `UPDATE membership SET role = 'viewer' WHERE person_id = $1`,
      [nursery.people.owner.personId],
    );
    expect(await refusalOf(work)).toMatchObject({ code: 'not-allowed', data: { role: 'viewer' } });
    expect(await nameOfNursery()).toBe('Test nursery');
    await nursery.sql(`UPDATE membership SET role = 'owner' WHERE person_id = $1`, [nursery.people.owner.personId]);
  });

  test('is done when nothing of that happened', async () => {
    await whileWaiting(() => nursery.as('owner').people.editNursery(settings('Written after all')), 'SELECT 1', []);
    expect(await nameOfNursery()).toBe('Written after all');
  });
});

describe('a calendar address', () => {
  test('asked for twenty times at once is one that works', async () => {
    const made = await Promise.all(
      Array.from({ length: 20 }, () => nursery.as('crew').people.createCalendarAddress(sent({}))),
    );
    expect(new Set(made.map(({ path }) => path)).size).toBe(20);
    const live = await nursery.sql(
      `SELECT FROM token WHERE person_id = $1 AND kind = 'calendar' AND revoked_at IS NULL`,
      [nursery.people.crew.personId],
    );
    expect(live).toHaveLength(1);
  });

  test('cannot be two in the database itself', async () => {
    const insert = () =>
      nursery.sql(
        `INSERT INTO token (hash, kind, nursery_id, person_id, created_at, expires_at) VALUES (sha256($3), 'calendar', $1, $2, $4, $4)`,
        [nursery.nurseryId, nursery.people.viewer.personId, Buffer.from(randomUUID()), nursery.clock.now()],
      );
    await insert();
    await expect(insert()).rejects.toMatchObject({ code: '23505', constraint: 'token_calendar_key' });
  });
});
