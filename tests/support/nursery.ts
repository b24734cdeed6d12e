import { createHash, randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { Role } from '@rootclock/domain';
import pg from 'pg';
import { uuidOf } from '../../apps/server/src/derived-id.ts';
import { openDatabase, type Database } from '../../apps/server/src/db/pool.ts';
import { createRunner } from '../../apps/server/src/db/runner.ts';
import { lettingGo } from '../../apps/server/src/features/files/letting-go.ts';
import { foreseeRoll, replan, rollDay } from '../../apps/server/src/features/replan.ts';
import { folderStore } from '../../apps/server/src/files/folder-store.ts';
import { appRouter } from '../../apps/server/src/router.ts';
import { createCallerFactory } from '../../apps/server/src/trpc/procedures.ts';
import { contextWithinServer } from '../../apps/server/src/trpc/within-server.ts';
import type { Caller } from '../../apps/server/src/trpc/operation.ts';
import type { TestDatabase } from './database.ts';

/** A day in the growing season of the Upper Midwest; tests move the clock themselves. */
export const FIRST_DAY = '2026-05-20';

export type TestNursery = Awaited<ReturnType<typeof openNursery>>;

const createCaller = createCallerFactory(appRouter);

/** The clock of a test: it stands still until it is set. */
export function testClock(day = FIRST_DAY) {
  let now = new Date(`${day}T17:00:00Z`);
  return {
    now: () => now,
    set: (next: string) => void (now = new Date(next.length === 10 ? `${next}T17:00:00Z` : next)),
  };
}

/** A server over the database of a test. Its nurseries share one clock, one runner and the connections, so that a test can afford many. */
export async function openServer(database: Pick<TestDatabase, 'ownerUrl' | 'url'>, { day = FIRST_DAY } = {}) {
  const clock = testClock(day);
  const owner = new pg.Client({ connectionString: database.ownerUrl });
  await owner.connect();
  const app: Database = openDatabase(database.url);
  const filesFolder = await mkdtemp(path.join(os.tmpdir(), 'rootclock-files-'));
  const files = folderStore(filesFolder);
  const letGo = lettingGo({ database: app, files });
  const runner = createRunner({ database: app, files, letGo, replan, rollDay, foreseeRoll, clock: clock.now });
  let before: Promise<unknown> = Promise.resolve();
  /** One after another, since a test may ask several things at once and the driver wants to be asked one by one. */
  const sql = async <Row extends pg.QueryResultRow>(text: string, values: unknown[] = []): Promise<Row[]> => {
    const asked = before.then(() => owner.query<Row>(text, values));
    before = asked.catch(() => {});
    return (await asked).rows;
  };

  /** The procedures of this server for the people of a nursery, which another server may have made. */
  const serve =
    (people: Record<Role, Caller>) =>
    (role: Role = 'grower') =>
      createCaller(contextWithinServer({ runner, database: app, caller: people[role] }));

  async function addNursery({ zone = 'America/Chicago' } = {}) {
    const nurseryId = randomUUID();
    await owner.query(
      `INSERT INTO nursery (id, name, zone, season_end_on) VALUES ($1, 'Test nursery', $2, '2026-10-31')`,
      [nurseryId, zone],
    );
    const people = {
      owner: await addPerson(owner, nurseryId, 'owner'),
      grower: await addPerson(owner, nurseryId, 'grower'),
      crew: await addPerson(owner, nurseryId, 'crew'),
      viewer: await addPerson(owner, nurseryId, 'viewer'),
    };
    return { nurseryId, clock, runner, app, files, filesFolder, people, as: serve(people), sql };
  }

  return {
    addNursery,
    serve,
    clock,
    runner,
    app,
    files,
    filesFolder,
    sql,
    close: async () => {
      await runner.plans.stop();
      await app.close();
      await owner.end();
      await rm(filesFolder, { recursive: true, force: true });
    },
  };
}

/**
 * A nursery of a test with one person of each role, worked through the real procedures.
 * `as(role)` gives the typed procedures; `sql` speaks as the owner, for setting up and for looking.
 */
export async function openNursery(
  database: Pick<TestDatabase, 'ownerUrl' | 'url'>,
  { zone = 'America/Chicago', day = FIRST_DAY } = {},
) {
  const server = await openServer(database, { day });
  return { ...(await server.addNursery({ zone })), close: server.close };
}

async function addPerson(owner: pg.Client, nurseryId: string, role: Role): Promise<Caller> {
  const personId = randomUUID();
  const email = `${role}-${personId.slice(0, 8)}@example.test`;
  await owner.query(`INSERT INTO person (id, email, name, password_hash) VALUES ($1, $2, $3, 'unusable')`, [
    personId,
    email,
    `Test ${role}`,
  ]);
  await owner.query('INSERT INTO membership (nursery_id, person_id, role) VALUES ($1, $2, $3)', [
    nurseryId,
    personId,
    role,
  ]);
  return { nurseryId, personId, personName: `Test ${role}`, email, role };
}

/** What the outbox of a browser does: a body under a command id of its own. */
export const sent = <Body>(body: Body, commandId: string = randomUUID()) => ({ commandId, body });

/** The error a procedure refused with; a procedure that did not refuse fails the test. */
export async function refusalOf(
  work: Promise<unknown>,
): Promise<{ code: string; data: Record<string, unknown> | undefined; field: string | undefined }> {
  try {
    await work;
  } catch (error) {
    const cause = (error as { cause?: { code?: string; data?: Record<string, unknown>; field?: string } }).cause;
    if (cause?.code) return { code: cause.code, data: cause.data, field: cause.field };
    throw error;
  }
  throw new Error('the procedure was expected to refuse');
}

/** The same id for the same words, so that a failing test names the same rows again. */
export function idOf(...words: string[]): string {
  return uuidOf(createHash('sha256').update(words.join('/')).digest('hex'), 4);
}
