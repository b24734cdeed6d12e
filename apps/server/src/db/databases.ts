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

/** Makes the database if it is not there. */
export async function ensureDatabase(adminUrl: string, name: string): Promise<void> {
  await asAdmin(adminUrl, async (client) => {
    const { rowCount } = await client.query('SELECT FROM pg_database WHERE datname = $1', [name]);
    if (rowCount === 0) await client.query(`CREATE DATABASE ${client.escapeIdentifier(name)}`);
  });
}

const login = 'rootclock_server';

/**
 * Makes the login that the server's pool uses, and returns its address in the owner's database. It has no rights of its
 * own and can do nothing but become rootclock_app: even a statement that resets the role gains nothing. Its password
 * follows from the owner's, so that no second secret has to be kept.
 */
export async function ensureServerLogin(ownerUrl: string): Promise<string> {
  const url = new URL(ownerUrl);
  const password = createHmac('sha256', decodeURIComponent(url.password)).update(login).digest('base64url');
  await asAdmin(ownerUrl, async (client) => {
    const name = client.escapeIdentifier(login);
    const { rowCount } = await client.query('SELECT FROM pg_roles WHERE rolname = $1', [login]);
    if (rowCount === 0) await client.query(`CREATE ROLE ${name} LOGIN NOINHERIT`);
    await client.query(`ALTER ROLE ${name} PASSWORD ${client.escapeLiteral(password)}`);
    await client.query(`GRANT rootclock_app TO ${name}`);
  });
  url.username = login;
  url.password = password;
  return url.href;
}
