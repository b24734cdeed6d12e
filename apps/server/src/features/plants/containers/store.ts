import { CONTAINER_KINDS, STANDINGS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { columns, editedRow } from '../../../db/editions.ts';
import { sql } from '../../../db/sql.ts';
import { found } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export const containerMeasures = z.strictObject({
  name: z.string(),
  volumeMl: z.nullable(z.number()),
  depthMm: z.nullable(z.number()),
  widthMm: z.nullable(z.number()),
  lengthMm: z.nullable(z.number()),
  cells: z.nullable(z.number()),
  tradeClass: z.nullable(z.string()),
  note: z.string(),
});
export type ContainerMeasures = z.infer<typeof containerMeasures>;

export const storedContainer = z.strictObject({
  ...containerMeasures.shape,
  id: z.string(),
  code: z.string(),
  kind: z.enum(CONTAINER_KINDS),
  standing: z.enum(STANDINGS),
  source: z.nullable(z.string()),
});
export type StoredContainer = z.infer<typeof storedContainer>;

export async function loadContainer(
  { tx, nurseryId }: ReadContext,
  id: string,
  field = 'containerId',
): Promise<StoredContainer> {
  const row = await tx.row(storedContainer)`
    SELECT id::text, code, name, kind, volume_ml AS "volumeMl", depth_mm AS "depthMm", width_mm AS "widthMm", length_mm AS "lengthMm", cells, trade_class AS "tradeClass",
           coalesce(note, '') AS note, standing, source
      FROM container WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  return found(row, 'container', field);
}

const containerCode = z.strictObject({ id: z.string(), code: z.string() });

/** The ids of containers by their codes. */
export async function loadContainerCodes({ tx, nurseryId }: ReadContext): Promise<Map<string, string>> {
  const rows = await tx.rows(containerCode)`SELECT id::text, code FROM container WHERE nursery_id = ${nurseryId}::uuid`;
  return new Map(rows.map(({ id, code }) => [code, id]));
}

/** Adds containers; one whose id or code is there already is left out. Answers how many were added. */
export async function insertContainers(
  { tx, nurseryId }: CommandContext,
  rows: readonly StoredContainer[],
): Promise<number> {
  return tx.run`
    INSERT INTO container (nursery_id, id, code, name, kind, volume_ml, depth_mm, width_mm, length_mm, cells, trade_class, standing, source, note)
    SELECT ${nurseryId}::uuid, c.id, c.code, c.name, c.kind, c."volumeMl", c."depthMm", c."widthMm", c."lengthMm", c.cells, c."tradeClass", c.standing, c.source, c.note
      FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS c (id uuid, code text, name text, kind text, "volumeMl" int, "depthMm" int, "widthMm" int, "lengthMm" int, cells int,
           "tradeClass" text, standing text, source text, note text)
    ON CONFLICT DO NOTHING`;
}

export async function updateContainer({ tx, nurseryId }: CommandContext, container: StoredContainer): Promise<void> {
  await tx.run`
    UPDATE container SET name = ${container.name}, volume_ml = ${container.volumeMl}::int, depth_mm = ${container.depthMm}::int, width_mm = ${container.widthMm}::int,
           length_mm = ${container.lengthMm}::int, cells = ${container.cells}::int, trade_class = ${container.tradeClass}, standing = ${container.standing}, source = ${container.source}, note = ${container.note}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${container.id}::uuid`;
}

export async function markContainerRetired(
  { tx, nurseryId }: CommandContext,
  id: string,
  at: Date | null,
): Promise<void> {
  await tx.run`UPDATE container SET retired_at = ${at}::timestamptz WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}

export const containerEdits = editedRow<{ containerId: string }>({
  table: 'container',
  row: ({ containerId }) => sql`r.id = ${containerId}::uuid`,
  fields: columns('name', 'volumeMl', 'depthMm', 'widthMm', 'lengthMm', 'cells', 'tradeClass', 'note'),
});
