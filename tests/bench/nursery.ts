// A database with one nursery in it: migrated, its history loaded by COPY, its clocks and promises reckoned by the server's own code, its laws proved.
import { createHash, randomUUID } from 'node:crypto';
import { checkLaws } from '@rootclock/server/db/check';
import { createDatabase, ensureServerLogin } from '@rootclock/server/db/databases';
import { migrate } from '@rootclock/server/db/migrate';
import { openDatabase } from '@rootclock/server/db/pool';
import { createRunner } from '@rootclock/server/db/runner';
import { loadReference } from '@rootclock/server/features/pot-life/rules/commands/load-reference';
import { foreseeRoll, replan, rollDay } from '@rootclock/server/features/replan';
import type { Caller } from '@rootclock/server/trpc/operation';
import pg from 'pg';
import { FIRST_YEAR, TODAY } from './load/grounds.ts';
import { type Loaded, loadHistory, type Size } from './load/history.ts';
import { liftKeys } from './load/keys.ts';

/** The moment at which everything is measured: the server's clock stands there. */
export const NOW = new Date(`${TODAY}T17:00:00Z`);
const SESSION_DAYS = 30;

export interface Nursery extends Loaded {
  name: string;
  url: string;
  ownerUrl: string;
  nurseryId: string;
  /** The cookie of a signed-in grower. */
  session: string;
  seconds: Record<'load' | 'keys' | 'vacuum' | 'firstDay' | 'laws', number>;
  /** Bytes of the whole database. */
  bytes: number;
}

async function timed<T>(work: () => Promise<T>): Promise<{ seconds: number; answer: T }> {
  const started = performance.now();
  const answer = await work();
  return { seconds: (performance.now() - started) / 1000, answer };
}

export async function makeNursery(
  adminUrl: string,
  urlOf: (name: string) => string,
  name: string,
  size: Size,
  say: (line: string) => void,
): Promise<Nursery> {
  await createDatabase(adminUrl, name);
  const ownerUrl = urlOf(name);
  await migrate(ownerUrl);
  const url = await ensureServerLogin(ownerUrl);
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    const { caller, session } = await openNursery(client);
    const { nurseryId } = caller;
    await asServer(url, new Date(`${FIRST_YEAR}-02-01T12:00:00Z`), (runner) =>
      runner.run(loadReference, caller, randomUUID(), {}, 'reference'),
    );
    say(`${name}: loading ${size.liveLots + size.closedLots} lots`);
    const restoreKeys = await liftKeys(client);
    const load = await timed(async () => {
      const loaded = await loadHistory(
        client,
        nurseryId,
        [caller.personId],
        (await versionOf(client, nurseryId)) + 1,
        size,
      );
      await client.query('UPDATE nursery SET version = $2 WHERE id = $1', [nurseryId, loaded.lastVersion]);
      return loaded;
    });
    say(`${name}: ${load.answer.rows.movement} movements in ${load.seconds.toFixed(1)} s; keys and indexes`);
    const keys = await timed(restoreKeys);
    const vacuum = await timed(() => client.query('VACUUM (ANALYZE)'));
    // Commands keep it with each batch; what was loaded past them is told here.
    await client.query('SELECT keep_batch_evidence($1, ARRAY(SELECT id FROM batch WHERE nursery_id = $1))', [
      nurseryId,
    ]);
    say(`${name}: the first day, on which all clocks and promises are reckoned`);
    const firstDay = await timed(() =>
      asServer(url, NOW, (runner) => runner.run(reckonAll, caller, randomUUID(), {}, 'reckon')),
    );
    // What was reckoned is new to the planner, and nothing is left to be written to disk while reads are measured.
    await client.query('ANALYZE');
    await client.query('CHECKPOINT');
    const laws = await timed(() => proveLaws(ownerUrl));
    const {
      rows: [sized],
    } = await client.query<{ bytes: string }>('SELECT pg_database_size(current_database()) AS bytes');
    return {
      ...load.answer,
      name,
      url,
      ownerUrl,
      nurseryId,
      session,
      bytes: Number(sized?.bytes),
      seconds: {
        load: load.seconds,
        keys: keys.seconds,
        vacuum: vacuum.seconds,
        firstDay: firstDay.seconds,
        laws: laws.seconds,
      },
    };
  } finally {
    await client.end();
  }
}

/** Throws with what broke. */
export async function proveLaws(ownerUrl: string): Promise<number> {
  const { breaches, laws } = await checkLaws(ownerUrl);
  if (breaches.length > 0)
    throw new Error(
      `the laws of the data are broken:\n${breaches.map(({ law, what }) => `  ${law}: ${what}`).join('\n')}`,
    );
  return laws.length;
}

/** What a change of rules does: everything that is open is reckoned anew. */
const reckonAll: typeof loadReference = {
  ...loadReference,
  name: 'reckonAll',
  run: async (context) => {
    context.touched.allClocks = true;
    return { plants: 0, containers: 0, rules: 0, windows: 0 };
  },
};

async function openNursery(client: pg.Client): Promise<{ caller: Caller; session: string }> {
  const caller: Caller = {
    nurseryId: randomUUID(),
    personId: randomUUID(),
    personName: 'Bench owner',
    email: 'owner@example.test',
    role: 'owner',
  };
  const session = randomUUID();
  await client.query(
    `INSERT INTO nursery (id, name, zone, season_end_on) VALUES ($1, 'Generated nursery', 'America/Chicago', '2026-10-31')`,
    [caller.nurseryId],
  );
  await client.query(`INSERT INTO person (id, email, name, password_hash) VALUES ($1, $2, $3, 'unusable')`, [
    caller.personId,
    caller.email,
    caller.personName,
  ]);
  await client.query('INSERT INTO membership (nursery_id, person_id, role) VALUES ($1, $2, $3)', [
    caller.nurseryId,
    caller.personId,
    caller.role,
  ]);
  const hash = createHash('sha256').update(session).digest();
  await client.query('SELECT open_token($1, $2, $3, $4, $5, $6)', [
    hash,
    'session',
    caller.nurseryId,
    caller.personId,
    NOW,
    new Date(NOW.getTime() + SESSION_DAYS * 86_400_000),
  ]);
  return { caller, session };
}

async function asServer<T>(
  url: string,
  now: Date,
  work: (runner: ReturnType<typeof createRunner>) => Promise<T>,
): Promise<T> {
  const database = openDatabase(url, { connections: 2 });
  try {
    const runner = createRunner({ database, replan, rollDay, foreseeRoll, clock: () => now });
    const answer = await work(runner);
    await runner.plans.settled();
    return answer;
  } finally {
    await database.close();
  }
}

async function versionOf(client: pg.Client, nurseryId: string): Promise<number> {
  const {
    rows: [nursery],
  } = await client.query<{ version: string }>('SELECT version FROM nursery WHERE id = $1', [nurseryId]);
  return Number(nursery?.version);
}
