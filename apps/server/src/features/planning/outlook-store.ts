import type { planning } from '@rootclock/contracts';
import * as z from 'zod/mini';
import type { ReadContext } from '../../trpc/operation.ts';

const askedItem = z.strictObject({
  demandUnits: z.number(),
  supplyUnits: z.number(),
  plantId: z.string(),
  plantCode: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  containerId: z.string(),
  containerCode: z.string(),
  containerName: z.string(),
});

/** Every item that stands, is on the way, is ordered or expected, with its names. */
export async function loadItems({ tx, nurseryId, today }: ReadContext): Promise<planning.OutlookItem[]> {
  return tx.rows(askedItem)`
    WITH row AS (
      SELECT l.plant_id, l.container_id, a.units AS supply, 0 AS demand FROM units_standing a JOIN lot_named l ON l.nursery_id = a.nursery_id AND l.id = a.lot_id
       WHERE a.nursery_id = ${nurseryId}::uuid AND a.kind = 'place' AND a.units > 0
      UNION ALL
      SELECT plant_id, target_container_id, cautious_units, 0 FROM batch_named WHERE nursery_id = ${nurseryId}::uuid AND closed_on IS NULL AND target_container_id IS NOT NULL AND cautious_units > 0
      UNION ALL
      SELECT l.plant_id, l.container_id, 0, greatest(0, l.units - g.staged_units - g.delivered_units)
        FROM order_named o JOIN line_asked l ON l.nursery_id = o.nursery_id AND l.order_id = o.id AND l.withdrawn_on IS NULL
        JOIN line_progress g ON g.nursery_id = l.nursery_id AND g.line_id = l.id
       WHERE o.nursery_id = ${nurseryId}::uuid AND o.state = 'open'
      UNION ALL
      SELECT plant_id, container_id, 0, units FROM expected_demand WHERE nursery_id = ${nurseryId}::uuid AND withdrawn_at IS NULL AND wanted_on >= ${today}::date)
    SELECT p.id::text AS "plantId", p.code AS "plantCode", p.scientific_name AS "scientificName", p.vernacular_name AS "vernacularName", c.id::text AS "containerId", c.code AS "containerCode",
           c.name AS "containerName", sum(r.demand)::int AS "demandUnits", sum(r.supply)::int AS "supplyUnits"
      FROM row r JOIN plant_named p ON p.nursery_id = ${nurseryId}::uuid AND p.id = r.plant_id JOIN container_named c ON c.nursery_id = p.nursery_id AND c.id = r.container_id
     GROUP BY p.id, p.code, p.scientific_name, p.vernacular_name, c.id, c.code, c.name
     ORDER BY sum(r.demand) > 0 DESC, p.scientific_name, c.name, c.id`;
}

const usualYield = z.strictObject({ id: z.string(), units: z.number() });

/** The usual yields of batches, by id. */
export async function loadUsualUnits(
  { tx, nurseryId }: ReadContext,
  batchIds: readonly string[],
): Promise<Map<string, number>> {
  const rows = await tx.rows(usualYield)`
    SELECT id::text, greatest(usual_units, cautious_units) AS units FROM batch_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...batchIds]}::uuid[])`;
  return new Map(rows.map(({ id, units }) => [id, units]));
}
