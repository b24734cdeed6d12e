// Turns a migrated database into the schema files: one file a feature, each table in the file of the feature whose
// migration made it.
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Migration } from '../../db/migrate.ts';
import { drift, introspect, type SchemaFile } from './engine.ts';
import { readModels, writeModel } from './models.ts';
import { pascal } from './naming.ts';
import { renameModels } from './rename.ts';

const header = `// Written by \`npm run -s rootclock -- schema\` from the migrations, like every file beside this one: change a
// migration, not this. The server asks in SQL and no client is generated; the generator names what this description uses.

generator client {
  provider        = "prisma-client"
  output          = "../apps/server/src/db/generated"
  runtime         = "nodejs"
  moduleFormat    = "esm"
  previewFeatures = ["partialIndexes"]
}

datasource db {
  provider = "postgresql"
}
`;

/** Tables that were made under one feature and belong to another now; their migrations keep their names. */
const MOVED: Record<string, string> = {
  batch_count: 'propagation',
  client: 'clients',
  site: 'clients',
  bed: 'clients',
  garden_order: 'orders',
  order_line: 'orders',
  line_alternative: 'orders',
  kit: 'orders',
  kit_component: 'orders',
  substitution_rule: 'orders',
};

/** Which feature owns each table, by the name of the migration that made it: `<14 digits>_<feature>_<what>`. */
export function featureOfTables(migrations: Migration[]): Map<string, string> {
  const owners = new Map<string, string>();
  for (const { name, sql } of migrations) {
    const feature = name.split('_')[1] as string;
    for (const [, table] of sql.matchAll(/^\s*CREATE TABLE (?:IF NOT EXISTS )?"?(\w+)"?/gim))
      owners.set(table as string, MOVED[table as string] ?? feature);
  }
  return owners;
}

/** Reads the database and answers the files that describe it, named as they are to lie in the schema folder. */
export async function schemaOf(url: string, migrations: Migration[]): Promise<SchemaFile[]> {
  const tables = readModels(await introspect(url, header));
  const owners = featureOfTables(migrations);
  const texts = new Map<string, string[]>();
  renameModels(tables).forEach((model, index) => {
    const table = tables[index]?.name as string;
    const feature = owners.get(table);
    if (feature === undefined)
      throw new Error(`no migration makes the table ${table} (model ${pascal(table)}), so no feature owns it`);
    texts.set(feature, [...(texts.get(feature) ?? []), writeModel(model)]);
  });
  const files = [...texts].map(([feature, models]) => ({
    path: `${feature}.prisma`,
    content: `${models.join('\n\n')}\n`,
  }));
  return [{ path: 'schema.prisma', content: header }, ...files];
}

/** The schema files as they lie in the folder. */
export function readSchema(folder: string): SchemaFile[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.prisma'))
    .sort()
    .map((name) => ({ path: name, content: readFileSync(path.join(folder, name), 'utf8') }));
}

/** Puts the files in place of what lay there. */
export function writeSchema(folder: string, files: SchemaFile[]): void {
  for (const { path: name } of readSchema(folder)) rmSync(path.join(folder, name));
  for (const file of files) writeFileSync(path.join(folder, file.path), file.content);
}

/** SQL that would turn the migrated database into what the files say; empty when they agree. */
export const driftOf = (url: string, files: SchemaFile[]): Promise<string> =>
  drift(url, files, ['public._prisma_migrations']);
