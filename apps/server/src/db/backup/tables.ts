import pg from 'pg';

export interface Table {
  name: string;
  /** Those that are stored; what the database reckons by itself is left to it. */
  columns: string[];
}

/** All tables as the database has them, so that a new one is in the next backup without a word. */
export async function readTables(client: pg.Client): Promise<Table[]> {
  const { rows } = await client.query<Table>(`
    SELECT c.relname::text AS name, array_agg(a.attname::text ORDER BY a.attnum) AS columns
      FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid
     WHERE c.relnamespace = current_schema()::regnamespace AND c.relkind IN ('r', 'p') AND NOT c.relispartition
       AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = ''
     GROUP BY c.relname ORDER BY c.relname`);
  return rows;
}

export const columnList = (columns: readonly string[]): string =>
  columns.map((column) => pg.escapeIdentifier(column)).join(', ');

/** Values are written and read the same way whatever the server's settings are; hidden rows are an error and not a gap. */
export const PLAIN_VALUES = `
  SET LOCAL datestyle = 'ISO, YMD'; SET LOCAL intervalstyle = 'iso_8601'; SET LOCAL timezone = 'UTC';
  SET LOCAL bytea_output = 'hex'; SET LOCAL extra_float_digits = 1; SET LOCAL row_security = off;
  SET LOCAL statement_timeout = 0; SET LOCAL idle_in_transaction_session_timeout = 0`;
