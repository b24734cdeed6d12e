import type { PlantingWindow } from '@rootclock/domain';
import * as z from 'zod/mini';
import { columns, editedRow, editedSettings } from '../../../../db/editions.ts';
import { setInNursery } from '../../../../db/nursery-row.ts';
import { sql } from '../../../../db/sql.ts';
import { found, refuse } from '../../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../../trpc/operation.ts';

export const storedWindow = z.strictObject({
  id: z.string(),
  opensMd: z.string(),
  closesMd: z.string(),
  maxContainerMl: z.nullable(z.number()),
  region: z.nullable(z.string()),
  note: z.string(),
  isRetired: z.boolean(),
});
export type StoredWindow = z.infer<typeof storedWindow>;

export async function loadWindow({ tx, nurseryId }: ReadContext, id: string): Promise<StoredWindow> {
  const row = await tx.row(storedWindow)`
    SELECT id::text, opens_md AS "opensMd", closes_md AS "closesMd", max_container_ml AS "maxContainerMl", region, note, retired_at IS NOT NULL AS "isRetired"
      FROM planting_window WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  const window = found(row, 'window', 'windowId');
  if (window.isRetired) refuse('window-retired', undefined, 'windowId');
  return window;
}

const twinRow = z.strictObject({ id: z.string() });

/** Whether another window has the same days for the same plants. */
export async function hasTwin(
  { tx, nurseryId }: ReadContext,
  { id, opensMd, closesMd, maxContainerMl, region }: PlantingWindow,
): Promise<boolean> {
  const row = await tx.row(twinRow)`
    SELECT id::text FROM planting_window
     WHERE nursery_id = ${nurseryId}::uuid AND retired_at IS NULL AND id <> ${id}::uuid AND opens_md = ${opensMd} AND closes_md = ${closesMd}
       AND max_container_ml IS NOT DISTINCT FROM ${maxContainerMl ?? null}::int AND region IS NOT DISTINCT FROM ${region ?? null}::text`;
  return row !== undefined;
}

export async function insertWindow(
  { tx, nurseryId }: CommandContext,
  { id, opensMd, closesMd, maxContainerMl, region }: PlantingWindow,
  note: string,
): Promise<boolean> {
  const added = await tx.run`
    INSERT INTO planting_window (nursery_id, id, opens_md, closes_md, max_container_ml, region, standing, note)
    VALUES (${nurseryId}::uuid, ${id}::uuid, ${opensMd}, ${closesMd}, ${maxContainerMl ?? null}::int, ${region ?? null}, 'own setting', ${note})
    ON CONFLICT DO NOTHING`;
  return added === 1;
}

export async function updateWindow(
  { tx, nurseryId }: CommandContext,
  { id, opensMd, closesMd, maxContainerMl, region }: PlantingWindow,
  { note, isOwn }: { note: string; isOwn: boolean },
): Promise<void> {
  await tx.run`
    UPDATE planting_window SET opens_md = ${opensMd}, closes_md = ${closesMd}, max_container_ml = ${maxContainerMl ?? null}::int, region = ${region ?? null}, note = ${note},
           standing = CASE WHEN ${isOwn} THEN 'own setting' ELSE standing END, source = CASE WHEN ${isOwn} THEN NULL ELSE source END
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}

export async function markWindowRetired({ tx, nurseryId, now }: CommandContext, id: string): Promise<void> {
  await tx.run`UPDATE planting_window SET retired_at = ${now} WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}

export async function storeFreezeDay(context: CommandContext, freezeMd: string): Promise<void> {
  await setInNursery(context, sql`freeze_md = ${freezeMd}, freeze_standing = 'own setting'`);
}

export const windowEdits = editedRow<{ windowId: string }>({
  table: 'planting_window',
  row: ({ windowId }) => sql`r.id = ${windowId}::uuid`,
  fields: columns('opensMd', 'closesMd', 'maxContainerMl', 'region', 'note'),
});

export const freezeDayEdits = editedSettings(columns('freezeMd'));
