import { found } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';

/** Names of the item someone asks about; a plant or container that is not this nursery's answers as not found. */
export async function loadItem({ tx, nurseryId }: ReadContext, plantId: string, containerId: string): Promise<{ scientificName: string; containerCode: string }> {
  const [row] = await tx.$queryRaw<{ scientificName: string | null; containerCode: string | null }[]>`
    SELECT (SELECT scientific_name FROM plant WHERE nursery_id = ${nurseryId}::uuid AND id = ${plantId}::uuid) AS "scientificName",
           (SELECT code FROM container WHERE nursery_id = ${nurseryId}::uuid AND id = ${containerId}::uuid) AS "containerCode"`;
  return { scientificName: found(row?.scientificName, 'plant', 'plantId'), containerCode: found(row?.containerCode, 'container', 'containerId') };
}

export async function loadRegion({ tx, nurseryId }: ReadContext, siteId: string): Promise<string | null> {
  const [row] = await tx.$queryRaw<{ region: string | null }[]>`SELECT region FROM site WHERE nursery_id = ${nurseryId}::uuid AND id = ${siteId}::uuid`;
  return found(row, 'site', 'siteId').region;
}

export async function loadLeadDays({ tx, nurseryId }: ReadContext, clientId: string): Promise<number> {
  const [row] = await tx.$queryRaw<{ leadDays: number }[]>`SELECT lead_days AS "leadDays" FROM client WHERE nursery_id = ${nurseryId}::uuid AND id = ${clientId}::uuid`;
  return found(row, 'client', 'clientId').leadDays;
}

/** The day of an order that is still open, with its open lines. */
export async function loadOrderDay({ tx, nurseryId }: ReadContext, orderId: string): Promise<{ dueOn: string; openLines: string[] }> {
  const [row] = await tx.$queryRaw<{ dueOn: string; openLines: string[] }[]>`
    SELECT o.due_on::text AS "dueOn",
           CASE WHEN o.state = 'open' THEN coalesce((SELECT array_agg(l.id::text ORDER BY l.rank) FROM order_line l WHERE l.nursery_id = o.nursery_id AND l.order_id = o.id AND l.withdrawn_on IS NULL), '{}') ELSE '{}' END AS "openLines"
      FROM garden_order o WHERE o.nursery_id = ${nurseryId}::uuid AND o.id = ${orderId}::uuid`;
  return found(row, 'order', 'orderId');
}
