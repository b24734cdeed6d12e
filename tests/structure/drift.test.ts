// The schema files are written from the migrations by `npm run -s rootclock -- schema`. Run it after each new migration and
// commit what it writes; these tests fail until then.
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';
import { driftOf, readSchema, schemaOf } from '@rootclock/server/cli/schema/pull';
import { readMigrations } from '@rootclock/server/db/migrate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../support/database.ts';

const folder = path.join(repositoryRoot, 'prisma');

let database: TestDatabase;
beforeAll(async () => {
  database = await createDatabase();
});
afterAll(() => database.drop());

describe('the schema files', () => {
  test('describe the database that the migrations make', async () => {
    expect(await driftOf(database.ownerUrl, readSchema(folder))).toBe('');
  });

  test('are what is written from the migrations today', async () => {
    const byName = (files: { path: string; content: string }[]) =>
      Object.fromEntries(files.map((file) => [file.path, file.content]));
    expect(byName(readSchema(folder))).toEqual(byName(await schemaOf(database.ownerUrl, readMigrations())));
  });

  test('are found to differ when a column is not in them', async () => {
    const files = readSchema(folder).map((file) => ({
      ...file,
      content: file.content.replace(/^ +seedsSown .*$/m, ''),
    }));
    expect(await driftOf(database.ownerUrl, files)).toContain('DROP COLUMN "seeds_sown"');
  });
});
