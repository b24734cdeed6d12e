import { createHash } from 'node:crypto';
import pg from 'pg';
import * as z from 'zod/mini';
import { heard, NoAnswer } from './no-answer.ts';
import { statementsOver, type Answered, type Statements } from './statements.ts';
import type { Sql } from './sql.ts';

/** The role that the server works as: it owns nothing, and row security binds it. */
export const APP_ROLE = 'rootclock_app';

/** What stores and reads are handed: one transaction, already set to one nursery. */
export type Tx = Statements;

/** Statements outside any transaction, and transactions. */
export interface Database extends Statements {
  transaction<Answer>(work: (tx: Tx) => Promise<Answer>): Promise<Answer>;
  /** A transaction that sees everything as of one moment, and in which the database refuses what writes. */
  snapshot<Answer>(work: (tx: Tx) => Promise<Answer>): Promise<Answer>;
  /** Ends the pool. Transactions that do not end in time are cut off: a database that says nothing would keep a server from ending. */
  close(): Promise<void>;
}

/** As long as statements under way may take to come back when the pool ends. */
const CLOSE_WITHIN_MS = 2_000;

/** As long as a transaction may take, and as long as it may wait for a connection. */
export const PATIENCE_MS = 10_000;

export function openDatabase(
  databaseUrl: string,
  connections = 10,
  patienceMs = PATIENCE_MS,
  waitMs = patienceMs,
): Database {
  const pool = new pg.Pool({
    connectionString: databaseUrl,
    max: connections,
    // Waiting is normal here: the writes of one nursery come one after another.
    connectionTimeoutMillis: waitMs,
    options: `-c role=${APP_ROLE} -c statement_timeout=${patienceMs} -c idle_in_transaction_session_timeout=${patienceMs}`,
    types: { getTypeParser },
  });
  // A connection that breaks while nobody uses it is replaced by the pool; unheard, the event would end the process.
  pool.on('error', () => {});

  const busy = new Set<pg.PoolClient>();

  async function transaction<Answer>(begin: string, work: (tx: Tx) => Promise<Answer>): Promise<Answer> {
    const client = await heard(pool.connect());
    busy.add(client);
    const overdue = deadline(patienceMs);
    const ask = (statement: Sql) => overdue.orSooner(asked(client, statement));
    let broken: Error | undefined;
    try {
      await overdue.orSooner(heard(client.query(begin)));
      const answer = await work(statementsOver(ask));
      await overdue.orSooner(commit(client));
      return answer;
    } catch (error) {
      broken = overdue.passed ? new Error('overdue') : await undo(client);
      throw error;
    } finally {
      overdue.clear();
      busy.delete(client);
      client.release(broken);
    }
  }

  return {
    ...statementsOver((statement) => asked(pool, statement)),
    transaction: (work) => transaction('BEGIN', work),
    snapshot: (work) => transaction('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY', work),
    async close() {
      const late = deadline(CLOSE_WITHIN_MS);
      await late.orSooner(pool.end()).catch(() => {
        for (const client of busy) void client.end();
      });
      late.clear();
    },
  };
}

/** Undoes the transaction. A connection that does not answer even that is closed instead, which undoes it as well. */
const undo = (client: pg.ClientBase) =>
  client.query('ROLLBACK').then(
    () => undefined,
    (failed: Error) => failed,
  );

type Asker = Pick<pg.ClientBase, 'query'>;

function asked(asker: Asker, statement: Sql): Promise<Answered> {
  const { text, values } = statement;
  return heard(asker.query({ name: statementName(text), text, values }));
}

/** Commits. PostgreSQL answers a transaction in which a statement failed by undoing it without an error; nobody must take that for done. */
async function commit(client: pg.ClientBase): Promise<void> {
  const { command } = await heard(client.query('COMMIT'));
  if (command !== 'COMMIT') throw new Error('a transaction went on after one of its statements had failed');
}

/** Ends the waiting for a database that says nothing, and for work that takes too long, at one moment for the whole transaction. */
function deadline(ms: number) {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => {
      state.passed = true;
      reject(new NoAnswer(new Error(`a transaction took longer than ${ms} ms`)));
    }, ms);
  });
  late.catch(() => {});
  const state = {
    passed: false,
    orSooner: <Answer>(answer: Promise<Answer>): Promise<Answer> => Promise.race([answer, late]),
    clear: () => clearTimeout(timer),
  };
  return state;
}

const DATE = 1082;
const DATES = 1182;
const TEXTS = 1009;

/** Days of the calendar stay text: as a moment they would fall on another day in another zone. */
function getTypeParser(oid: number, format?: 'text' | 'binary') {
  if (oid === DATE) return (text: string) => text;
  if (oid === DATES) return pg.types.getTypeParser(TEXTS as number);
  return pg.types.getTypeParser(oid, format as 'text');
}

const statementNames = new Map<string, string>();
/** Beyond this many texts something is built from values that should be parameters; such statements are planned each time. */
const MOST_STATEMENTS = 1000;

/** A name for each statement text, so that a connection plans it once: planning costs more than running for most of them. */
function statementName(sql: string): string {
  const known = statementNames.get(sql);
  if (known) return known;
  if (statementNames.size >= MOST_STATEMENTS) return '';
  const name = `rc_${createHash('sha256').update(sql).digest('hex').slice(0, 24)}`;
  statementNames.set(sql, name);
  return name;
}

const serverRole = z.strictObject({ name: z.string(), bypasses: z.boolean(), owned: z.number() });

/** Why this database must not be served from, or null. The laws hold only where the server's role is bound by them. */
export async function findRoleFault(database: Database): Promise<string | null> {
  const role = await database.row(serverRole)`
    SELECT current_user::text AS name, r.rolsuper OR r.rolbypassrls AS bypasses,
           (SELECT count(*)::int FROM pg_class c WHERE c.relowner = r.oid AND c.relkind IN ('r', 'p')) AS owned
      FROM pg_roles r WHERE r.rolname = current_user`;
  if (!role) return 'the role of the connection could not be read';
  if (role.bypasses) return `the role ${role.name} bypasses row security`;
  if (role.owned > 0) return `the role ${role.name} owns ${role.owned} tables`;
  return null;
}
