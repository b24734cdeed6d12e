import { createHash } from 'node:crypto';
import pg from 'pg';
import * as z from 'zod/mini';
import { heard, isMistake, NoAnswer } from './no-answer.ts';
import { statementsOver, type Statements } from './statements.ts';
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

/** As long as a transaction may take, and may wait for a connection, unless it is said otherwise. */
const PATIENCE_MS = 10_000;

export interface PoolOptions {
  connections?: number;
  /** As long as a transaction may take. */
  patienceMs?: number;
  /** As long as it may wait for a connection. */
  waitMs?: number;
  /** Told of each statement as it is sent. */
  sends?: (text: string) => void;
}

export function openDatabase(
  databaseUrl: string,
  { connections = 10, patienceMs = PATIENCE_MS, waitMs = patienceMs, sends }: PoolOptions = {},
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

  /** Lends a connection to work that has to be done by one moment. One that is not sure to be as it was is not lent again. */
  async function lend<Answer>(work: (ask: AskDriver) => Promise<Answer>, undo: Undo): Promise<Answer> {
    const client = await heard(pool.connect());
    // The pool does not listen to what it has lent. What broke is told by the statement under way or by the next one.
    client.on('error', unheard);
    busy.add(client);
    const overdue = deadline(patienceMs);
    const ask: AskDriver = (query) => {
      // Behind a statement that never came back nothing would be answered either.
      if (overdue.passed) return overdue.late;
      sends?.(query.text);
      return overdue.orSooner(heard(client.query(query)));
    };
    let unsure: Error | undefined;
    try {
      return await work(ask);
    } catch (error) {
      unsure = await undo(ask, error);
      throw error;
    } finally {
      overdue.clear();
      busy.delete(client);
      client.off('error', unheard);
      client.release(unsure);
    }
  }

  const transaction = <Answer>(begin: string, work: (tx: Tx) => Promise<Answer>): Promise<Answer> =>
    lend(async (ask) => {
      await ask({ text: begin });
      const answer = await work(statementsOver((statement) => ask(named(statement))));
      await commit(ask);
      return answer;
    }, rollBack);

  return {
    ...statementsOver((statement) => lend((ask) => ask(named(statement)), undoNothing)),
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

type AskDriver = (query: pg.QueryConfig) => Promise<pg.QueryResult>;

/** After a failure: answers why the connection must not be used again, or nothing. */
type Undo = (ask: AskDriver, failure: unknown) => Promise<Error | undefined>;

const unheard = () => {};

/**
 * A value that could not be written lets the driver drop a statement's name at PostgreSQL and keep it here, so that the same statement would
 * fail from then on.
 */
const isUnsure = (failure: unknown): failure is Error => failure instanceof NoAnswer || isMistake(failure);

const undoNothing: Undo = async (_, failure) => (isUnsure(failure) ? failure : undefined);

/** Undoes the transaction. A connection that does not answer even that is closed instead, which undoes it as well. */
const rollBack: Undo = async (ask, failure) =>
  isUnsure(failure)
    ? failure
    : ask({ text: 'ROLLBACK' }).then(
        () => undefined,
        (failed: Error) => failed,
      );

const named = ({ text, values }: Sql): pg.QueryConfig => ({ name: statementName(text), text, values });

/** Commits. PostgreSQL answers a transaction in which a statement failed by undoing it without an error; nobody must take that for done. */
async function commit(ask: AskDriver): Promise<void> {
  const { command } = await ask({ text: 'COMMIT' });
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
    late,
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
