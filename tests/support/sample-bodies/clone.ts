import type { openServer } from '../nursery.ts';
import type { SampleRows } from './rows.ts';

type Server = Pick<Awaited<ReturnType<typeof openServer>>, 'addNursery' | 'sql'>;

/** Tables of the tenants whose rows say who may sign in; a copy has people of its own. */
const NOT_COPIED = ['membership', 'token'];

/**
 * A second nursery with the very rows of the first, ids included, so that a command can be tried on it and leave the first as it was.
 * Its triggers are off meanwhile: the rows went through the laws when the first was made.
 */
export async function cloneNursery(server: Server, from: { nurseryId: string; rows: SampleRows }) {
  const nursery = await server.addNursery();
  const tables = await server.sql<{ name: string; columns: string }>(
    `
    SELECT c.relname AS name, string_agg(quote_ident(a.attname), ', ' ORDER BY a.attnum) FILTER (WHERE a.attname <> 'nursery_id' AND a.attgenerated = '') AS columns
      FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace AND n.nspname = 'public' JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
     WHERE c.relkind = 'r' AND c.relname <> ALL ($1) GROUP BY c.relname HAVING bool_or(a.attname = 'nursery_id')`,
    [NOT_COPIED],
  );
  const copies = tables.map(
    ({ name, columns }) =>
      `INSERT INTO ${name} (nursery_id, ${columns}) SELECT '${nursery.nurseryId}', ${columns} FROM ${name} WHERE nursery_id = '${from.nurseryId}';`,
  );
  await server.sql(`BEGIN; SET LOCAL session_replication_role = replica; ${copies.join('\n')}
    UPDATE nursery SET version = f.version, rolled_on = f.rolled_on, rules_version = f.rules_version FROM nursery f WHERE f.id = '${from.nurseryId}' AND nursery.id = '${nursery.nurseryId}'; COMMIT;`);
  return { nursery, rows: { ...from.rows, personId: nursery.people.crew.personId } };
}
