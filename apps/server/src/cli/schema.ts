// `rootclock schema`, for developers: after a migration was added, writes the schema files anew from a scratch database
// that has all of them. The bootstrap then generates the client from them.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { repositoryRoot } from '../config.ts';
import { startEmbedded } from '../db/embedded.ts';
import { migrate, readMigrations } from '../db/migrate.ts';
import { driftOf, schemaOf, writeSchema } from './schema/pull.ts';

export async function schema(): Promise<number> {
  const scratch = mkdtempSync(path.join(tmpdir(), 'rootclock-schema-'));
  try {
    const server = await startEmbedded(scratch, { durable: false });
    try {
      const url = server.url('postgres');
      const migrations = readMigrations();
      await migrate(url, migrations);
      const files = await schemaOf(url, migrations);
      const difference = await driftOf(url, files);
      if (difference !== '')
        throw new Error(`What was read does not describe the database; it would take:\n${difference}`);
      writeSchema(path.join(repositoryRoot, 'prisma'), files);
      console.error(`Wrote ${files.map((file) => `prisma/${file.path}`).join(', ')}.`);
      return 0;
    } finally {
      await server.stop();
    }
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}
