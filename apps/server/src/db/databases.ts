// Databases and logins on a server that is ours alone: the embedded one, and the one that tests run on.
import { createHmac } from 'node:crypto';
import pg from 'pg';

async function asAdmin<T>(adminUrl: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: adminUrl });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

export function hasDatabase(adminUrl: string, name: string): Promise<boolean> {
  return asAdmin(
    adminUrl,
    async (client) => (await client.query('SELECT FROM pg_database WHERE datname = $1', [name])).rowCount === 1,
  );
}

/** Makes an empty database, or a copy of another that nobody is connected to. */
export async function createDatabase(adminUrl: string, name: string, template?: string): Promise<void> {
  await asAdmin(adminUrl, (client) =>
    client.query(
      `CREATE DATABASE ${pg.escapeIdentifier(name)}${template === undefined ? '' : ` TEMPLATE ${pg.escapeIdentifier(template)}`}`,
    ),
  );
}

/** Drops the database if it is there, closing the connections of whoever still uses it. */
export async function dropDatabase(adminUrl: string, name: string): Promise<void> {
  await asAdmin(adminUrl, (client) =>
    client.query(`DROP DATABASE IF EXISTS ${pg.escapeIdentifier(name)} WITH (FORCE)`),
  );
}

/** Renames a database that nobody is connected to. */
export async function renameDatabase(adminUrl: string, from: string, to: string): Promise<void> {
  await asAdmin(adminUrl, (client) =>
    client.query(`ALTER DATABASE ${pg.escapeIdentifier(from)} RENAME TO ${pg.escapeIdentifier(to)}`),
  );
}

/**
 * Whether a commit in this database waits until it is on disk. Not waiting is for a database that is thrown away when its
 * filling is interrupted; the first commit that waits, in any database of the server, brings all earlier ones to disk.
 */
export async function waitForDisk(adminUrl: string, name: string, wait: boolean): Promise<void> {
  await asAdmin(adminUrl, (client) =>
    client.query(
      `ALTER DATABASE ${pg.escapeIdentifier(name)} ${wait ? 'RESET synchronous_commit' : 'SET synchronous_commit = off'}`,
    ),
  );
}

const login = 'rootclock_server';

/**
 * The address that the server's pool uses in the owner's database. The password follows from the owner's, so that no second
 * secret has to be kept.
 */
export function serverLogin(ownerUrl: string): string {
  const url = new URL(ownerUrl);
  url.password = createHmac('sha256', decodeURIComponent(url.password)).update(login).digest('base64url');
  url.username = login;
  return url.href;
}

/**
 * Makes that login, which has no rights of its own and can do nothing but become rootclock_app: even a statement that resets
 * the role gains nothing. Answers its address.
 */
export async function ensureServerLogin(ownerUrl: string): Promise<string> {
  const address = serverLogin(ownerUrl);
  await asAdmin(ownerUrl, async (client) => {
    const name = pg.escapeIdentifier(login);
    const { rowCount } = await client.query('SELECT FROM pg_roles WHERE rolname = $1', [login]);
    if (rowCount === 0) await client.query(`CREATE ROLE ${name} LOGIN NOINHERIT`);
    await client.query(`ALTER ROLE ${name} PASSWORD ${pg.escapeLiteral(new URL(address).password)}`);
    await client.query(`GRANT rootclock_app TO ${name}`);
  });
  return address;
}
