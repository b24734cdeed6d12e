import * as z from 'zod/mini';
import { join, raw, sql, type Sql } from './sql.ts';
/**
 * The edition of a row that people edit, read and raised in one place for all of them. It is 1 as the row was made, and then the nursery's version at
 * which the row was last edited: the log of commands tells by whom and when without a column more.
 */
import { storedRow, type CommandContext, type Edits, type ReadContext } from '../trpc/operation.ts';

/** For a statement that changes typed columns beside the editing commands, so that whoever read the row before learns of it. */
export const raised = ({ version }: Pick<CommandContext, 'version'>): Sql =>
  sql`edition = greatest(edition + 1, ${version}::int)`;

/** The columns of fields that are called as their columns are: leadDays is lead_days. */
export const columns = (...fields: string[]): Record<string, string> =>
  Object.fromEntries(
    fields.map((field) => [field, `r.${field.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)}`]),
  );

interface EditedTable<Body> {
  table: string;
  /** The row itself, as `r`, within the nursery. */
  row: (body: Body) => Sql;
  /** Of each field the SQL that answers it, as constant text. */
  fields: Record<string, string>;
  partial?: boolean;
}

/** A row of a tenant's table. */
export function editedRow<Body>({ table, row, fields, partial = false }: EditedTable<Body>): Edits<Body> {
  return editsOf({
    table,
    fields,
    partial,
    where: ({ nurseryId }, body) => sql`r.nursery_id = ${nurseryId}::uuid AND ${row(body)}`,
  });
}

/** The settings of the nursery itself. */
export function editedSettings(fields: Record<string, string>): Edits<unknown> {
  return editsOf({
    table: 'nursery',
    fields,
    partial: false,
    where: ({ nurseryId }) => sql`r.id = ${nurseryId}::uuid`,
  });
}

type Where<Body> = (context: ReadContext, body: Body) => Sql;

const editionRow = z.strictObject({ edition: z.number() });

function editsOf<Body>({
  table,
  fields,
  partial,
  where,
}: {
  table: string;
  fields: Record<string, string>;
  partial: boolean;
  where: Where<Body>;
}): Edits<Body> {
  const from = raw(`${table} r`);
  const built = raw(
    `jsonb_build_object(${Object.entries(fields)
      .map(([field, column]) => `'${field}', ${column}`)
      .join(', ')})`,
  );
  return {
    partial,
    load: async (context, body) => {
      const row = await context.tx.row(
        storedRow,
      )`SELECT r.edition, ${built} AS fields FROM ${from} WHERE ${where(context, body)}`;
      return row ?? null;
    },
    raise: async (context, body, edition) => {
      const row = await context.tx.row(editionRow)`
        UPDATE ${from} SET edition = greatest(${edition}::int + 1, ${context.version}::int)
         WHERE ${where(context, body)} AND r.edition IN (${edition}::int, greatest(${edition}::int + 1, ${context.version}::int)) RETURNING r.edition`;
      if (!row) throw new Error(`the row of ${table} moved on from edition ${edition} while the nursery was locked`);
      return row.edition;
    },
  };
}

const editorRow = z.strictObject({ personId: z.nullable(z.string()), by: z.nullable(z.string()), at: z.date() });

/** Who saved an edition and when; nobody is named for what came about otherwise. */
export async function loadEditor(
  { tx, nurseryId }: ReadContext,
  edition: number,
): Promise<{ personId: string | null; by: string | null; at: string | null }> {
  const row = await tx.row(editorRow)`
    SELECT c.person_id::text AS "personId", n.name AS by, c.recorded_at AS at FROM command c LEFT JOIN nursery_people() n ON n.person_id = c.person_id
     WHERE c.nursery_id = ${nurseryId}::uuid AND c.version = ${edition}`;
  return { personId: row?.personId ?? null, by: row?.by ?? null, at: row?.at.toISOString() ?? null };
}

const calledRow = z.strictObject({ id: z.string(), name: z.string() });

/** What people call the rows that these values name by id. */
export async function loadCalled({ tx, nurseryId }: ReadContext, values: unknown): Promise<Record<string, string>> {
  const ids = JSON.stringify(values).match(/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g) ?? [];
  if (ids.length === 0) return {};
  const named = (table: string, column: string) =>
    sql`SELECT id, ${raw(column)} AS name FROM ${raw(table)} WHERE nursery_id = ${nurseryId}::uuid`;
  const all = [
    named('plant', 'scientific_name'),
    named('container', 'name'),
    named('place', 'code'),
    named('bed', 'name'),
    named('lot', 'code'),
  ];
  const rows = await tx.rows(calledRow)`
    SELECT x.id::text, x.name FROM (${join(all, ' UNION ALL ')}) x WHERE x.id = ANY (${ids}::uuid[])`;
  return Object.fromEntries(rows.map(({ id, name }) => [id, name]));
}
