import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';

export const kinItem = z.strictObject({
  kind: z.enum(['size', 'kin']),
  plantId: z.string(),
  scientificName: z.string(),
  containerId: z.string(),
  containerName: z.string(),
});
export type KinItem = z.infer<typeof kinItem>;

/** Items of which something stands or grows: the same plant in other containers that a line may mix with the one asked for, and plants of its genus in the same one. */
export async function loadKin(
  { tx, nurseryId }: ReadContext,
  plantId: string,
  containerId: string,
): Promise<KinItem[]> {
  return tx.rows(kinItem)`
    WITH asked AS MATERIALIZED (SELECT id, genus FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${plantId}::uuid),
    pot AS MATERIALIZED (SELECT cells FROM container_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${containerId}::uuid),
    kin AS MATERIALIZED (SELECT p.id, p.scientific_name FROM plant_named p JOIN asked a ON a.genus = p.genus WHERE p.nursery_id = ${nurseryId}::uuid),
    item AS MATERIALIZED (
      SELECT l.plant_id, l.container_id FROM kin k JOIN lot_named l ON l.nursery_id = ${nurseryId}::uuid AND l.plant_id = k.id AND l.closed_on IS NULL
      UNION
      SELECT b.plant_id, b.target_container_id FROM kin k JOIN batch_named b ON b.nursery_id = ${nurseryId}::uuid AND b.plant_id = k.id AND b.closed_on IS NULL AND b.cautious_units > 0)
    SELECT CASE WHEN i.plant_id = ${plantId}::uuid THEN 'size' ELSE 'kin' END AS kind, k.id::text AS "plantId", k.scientific_name AS "scientificName",
           c.id::text AS "containerId", c.name AS "containerName"
      FROM item i
      JOIN kin k ON k.id = i.plant_id
      JOIN container_named c ON c.nursery_id = ${nurseryId}::uuid AND c.id = i.container_id
      JOIN pot ON pot.cells IS NOT DISTINCT FROM c.cells
     WHERE (i.plant_id = ${plantId}::uuid) <> (i.container_id = ${containerId}::uuid) AND c.kind <> 'ground'
     ORDER BY kind DESC, k.scientific_name, c.name`;
}
