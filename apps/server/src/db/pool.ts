import { createHash } from 'node:crypto';
import { PrismaPg } from '@prisma/adapter-pg';
import { PrismaClient, type Prisma } from './generated/client.ts';
import { tellingNoAnswer } from './no-answer.ts';

/** The role that the server works as: it owns nothing, and row security binds it. */
export const APP_ROLE = 'rootclock_app';

/** What stores and reads are handed: one transaction, already set to one nursery. */
export type Tx = Prisma.TransactionClient;
export type Database = PrismaClient;

/** As long as a transaction may take, and as long as it may wait for a connection. */
export const PATIENCE_MS = 10_000;

export function openDatabase(databaseUrl: string, connections = 10, patienceMs = PATIENCE_MS): Database {
  const driver = new PrismaPg(
    { connectionString: databaseUrl, max: connections, options: `-c role=${APP_ROLE}` },
    { statementNameGenerator: ({ sql }) => statementName(sql) },
  );
  // Waiting is normal here: the writes of one nursery come one after another.
  return new PrismaClient({
    adapter: tellingNoAnswer(driver),
    transactionOptions: { maxWait: patienceMs, timeout: patienceMs },
  });
}

/** As long as statements under way may take to come back; a database that says nothing would keep a server from ending. */
const CLOSE_WITHIN_MS = 2_000;

/** Ends the pool. What the database does not give back in time is left to the end of the process. */
export async function closeDatabase(database: Database): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, CLOSE_WITHIN_MS);
  });
  await Promise.race([database.$disconnect(), late]);
  clearTimeout(timer);
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

/** Why this database must not be served from, or null. The laws hold only where the server's role is bound by them. */
export async function findRoleFault(database: Database): Promise<string | null> {
  const [role] = await database.$queryRaw<{ name: string; bypasses: boolean; owned: number }[]>`
    SELECT current_user::text AS name, r.rolsuper OR r.rolbypassrls AS bypasses,
           (SELECT count(*)::int FROM pg_class c WHERE c.relowner = r.oid AND c.relkind IN ('r', 'p')) AS owned
      FROM pg_roles r WHERE r.rolname = current_user`;
  if (!role) return 'the role of the connection could not be read';
  if (role.bypasses) return `the role ${role.name} bypasses row security`;
  if (role.owned > 0) return `the role ${role.name} owns ${role.owned} tables`;
  return null;
}
