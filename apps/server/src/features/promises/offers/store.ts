import * as z from 'zod/mini';
import { found } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';

const itemRow = z.strictObject({
  scientificName: z.nullable(z.string()),
  containerCode: z.nullable(z.string()),
  cells: z.nullable(z.number()),
});

/** Names of the item someone asks about; a plant or container that is not this nursery's answers as not found. */
export async function loadItem(
  { tx, nurseryId }: ReadContext,
  plantId: string,
  containerId: string,
): Promise<{ scientificName: string; containerCode: string; cells: number | null }> {
  const row = await tx.row(itemRow)`
    SELECT (SELECT scientific_name FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${plantId}::uuid) AS "scientificName", c.code AS "containerCode", c.cells
      FROM (SELECT) one LEFT JOIN container_named c ON c.nursery_id = ${nurseryId}::uuid AND c.id = ${containerId}::uuid`;
  return {
    scientificName: found(row?.scientificName, 'plant', 'plantId'),
    containerCode: found(row?.containerCode, 'container', 'containerId'),
    cells: row?.cells ?? null,
  };
}

const wishedItem = z.strictObject({ plantId: z.string(), containerId: z.string() });

/** Items that open lines ask for, of a lot's or batch's plant and its genus. */
export async function loadKinWishes(
  { tx, nurseryId }: ReadContext,
  supplyId: string,
): Promise<{ plantId: string; containerId: string }[]> {
  return tx.rows(wishedItem)`
    WITH own AS MATERIALIZED (
      SELECT p.genus FROM plant_named p WHERE p.nursery_id = ${nurseryId}::uuid AND p.id = coalesce(
        (SELECT plant_id FROM lot_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${supplyId}::uuid), (SELECT plant_id FROM batch_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${supplyId}::uuid)))
    SELECT DISTINCT l.plant_id::text AS "plantId", l.container_id::text AS "containerId"
      FROM own JOIN plant_named p ON p.nursery_id = ${nurseryId}::uuid AND p.genus = own.genus
      JOIN line_asked l ON l.nursery_id = p.nursery_id AND l.plant_id = p.id AND l.withdrawn_on IS NULL
      JOIN order_named o ON o.nursery_id = l.nursery_id AND o.id = l.order_id AND o.state = 'open'`;
}

const askingClient = z.strictObject({ name: z.string(), leadDays: z.number() });

/** Who asks, and how long before the plant-by day plants must leave for them. One whose data were blanked is answered too. */
export async function loadAskingClient(
  { tx, nurseryId }: ReadContext,
  clientId: string,
): Promise<z.infer<typeof askingClient>> {
  const row = await tx.row(askingClient)`
    SELECT name, lead_days AS "leadDays" FROM client_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${clientId}::uuid`;
  return found(row, 'client', 'clientId');
}
