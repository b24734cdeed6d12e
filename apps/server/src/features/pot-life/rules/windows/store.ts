import type { PlantingWindow } from '@rootclock/domain';
import { columns, editedRow, editedSettings } from '../../../../db/editions.ts';
import { Prisma } from '../../../../db/generated/client.ts';
import { found, refuse } from '../../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../../trpc/operation.ts';

export interface StoredWindow {
  id: string;
  opensMd: string;
  closesMd: string;
  maxContainerMl: number | null;
  region: string | null;
  note: string;
  isRetired: boolean;
}

export async function loadWindow({ tx, nurseryId }: ReadContext, id: string): Promise<StoredWindow> {
  const [row] = await tx.$queryRaw<StoredWindow[]>`
    SELECT id::text, opens_md AS "opensMd", closes_md AS "closesMd", max_container_ml AS "maxContainerMl", region, note, retired_at IS NOT NULL AS "isRetired"
      FROM planting_window WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  const window = found(row, 'window', 'windowId');
  if (window.isRetired) refuse('window-retired', undefined, 'windowId');
  return window;
}

/** Whether another window has the same days for the same plants. */
export async function hasTwin(
  { tx, nurseryId }: ReadContext,
  { id, opensMd, closesMd, maxContainerMl, region }: PlantingWindow,
): Promise<boolean> {
  const [row] = await tx.$queryRaw<{ id: string }[]>`
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
  const added = await tx.$executeRaw`
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
  await tx.$executeRaw`
    UPDATE planting_window SET opens_md = ${opensMd}, closes_md = ${closesMd}, max_container_ml = ${maxContainerMl ?? null}::int, region = ${region ?? null}, note = ${note},
           standing = CASE WHEN ${isOwn} THEN 'own setting' ELSE standing END, source = CASE WHEN ${isOwn} THEN NULL ELSE source END
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}

export async function markWindowRetired({ tx, nurseryId, now }: CommandContext, id: string): Promise<void> {
  await tx.$executeRaw`UPDATE planting_window SET retired_at = ${now} WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}

export async function storeFreezeDay({ tx, nurseryId }: CommandContext, freezeMd: string): Promise<void> {
  await tx.$executeRaw`UPDATE nursery SET freeze_md = ${freezeMd}, freeze_standing = 'own setting' WHERE id = ${nurseryId}::uuid`;
}

export const windowEdits = editedRow<{ windowId: string }>({
  table: 'planting_window',
  row: ({ windowId }) => Prisma.sql`r.id = ${windowId}::uuid`,
  fields: columns('opensMd', 'closesMd', 'maxContainerMl', 'region', 'note'),
});

export const freezeDayEdits = editedSettings(columns('freezeMd'));
