import * as z from 'zod/mini';
import type { CommandContext, ReadContext } from '../../../../trpc/operation.ts';
import { setSourcePlants } from '../../../sources/store.ts';

/** A lot, batch or source of one line of descent, and the plant it is said to be. */
export const kinRow = z.strictObject({
  kind: z.enum(['lot', 'batch', 'source']),
  id: z.string(),
  code: z.string(),
  plantId: z.string(),
});
export type Kin = z.infer<typeof kinRow>;

/**
 * A lot or source with all that came from it: lots made from it, sources taken from those as mother stock, and what was started from them.
 */
export async function loadDescent(
  { tx, nurseryId }: ReadContext,
  start: { kind: 'lot' | 'source'; id: string },
): Promise<Kin[]> {
  return tx.rows(kinRow)`
    WITH RECURSIVE kin (kind, id) AS (
      SELECT ${start.kind}, ${start.id}::uuid
      UNION
      SELECT n.kind, n.id FROM kin k CROSS JOIN LATERAL (
        SELECT 'lot' AS kind, g.child_lot_id AS id FROM lineage g WHERE k.kind <> 'source' AND g.nursery_id = ${nurseryId}::uuid AND g.parent_id = k.id
        UNION ALL SELECT 'source', s.id FROM source_named s WHERE k.kind = 'lot' AND s.nursery_id = ${nurseryId}::uuid AND s.mother_lot_id = k.id
        UNION ALL SELECT 'lot', l.id FROM lot l WHERE k.kind = 'source' AND l.nursery_id = ${nurseryId}::uuid AND l.source_id = k.id
        UNION ALL SELECT 'batch', b.id FROM batch b WHERE k.kind = 'source' AND b.nursery_id = ${nurseryId}::uuid AND b.source_id = k.id) n)
    SELECT k.kind, k.id::text, r.code, r.plant_id::text AS "plantId" FROM kin k CROSS JOIN LATERAL (
      SELECT l.code, l.plant_id FROM lot l WHERE k.kind = 'lot' AND l.nursery_id = ${nurseryId}::uuid AND l.id = k.id
      UNION ALL SELECT b.code, b.plant_id FROM batch b WHERE k.kind = 'batch' AND b.nursery_id = ${nurseryId}::uuid AND b.id = k.id
      UNION ALL SELECT s.code, s.plant_id FROM source_named s WHERE k.kind = 'source' AND s.nursery_id = ${nurseryId}::uuid AND s.id = k.id) r
     ORDER BY k.kind, r.code`;
}

/** Says of lots, batches and sources which plant they are. */
export async function setPlants(
  context: CommandContext,
  kin: readonly Pick<Kin, 'kind' | 'id' | 'plantId'>[],
): Promise<void> {
  const { tx, nurseryId, touched } = context;
  for (const { kind, id } of kin) {
    if (kind === 'lot') touched.lot(id);
    if (kind === 'batch') touched.batch(id);
  }
  const rows = JSON.stringify(kin.map(({ kind, id, plantId }) => ({ kind, id, plantId })));
  await tx.run`
    WITH said AS (SELECT * FROM jsonb_to_recordset(${rows}::jsonb) AS r (kind text, id uuid, "plantId" uuid)),
    lots AS (UPDATE lot l SET plant_id = s."plantId" FROM said s WHERE s.kind = 'lot' AND l.nursery_id = ${nurseryId}::uuid AND l.id = s.id)
    UPDATE batch b SET plant_id = s."plantId" FROM said s WHERE s.kind = 'batch' AND b.nursery_id = ${nurseryId}::uuid AND b.id = s.id`;
  await setSourcePlants(
    context,
    kin.filter(({ kind }) => kind === 'source'),
  );
}

const plantNameRow = z.strictObject({ name: z.string() });

export async function loadPlantName({ tx, nurseryId }: ReadContext, plantId: string): Promise<string | undefined> {
  const row = await tx.row(plantNameRow)`
    SELECT scientific_name AS name FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${plantId}::uuid AND retired_at IS NULL`;
  return row?.name;
}

/** A garden in which plants of some lots stand, as far as they were planted for an order. */
export const plantedGarden = z.strictObject({
  orderId: z.nullable(z.string()),
  orderCode: z.nullable(z.string()),
  client: z.nullable(z.string()),
  site: z.nullable(z.string()),
  units: z.number(),
  lastPlantedOn: z.string(),
});
export type PlantedGarden = z.infer<typeof plantedGarden>;

/** Where plants of these lots are in the ground already. What was taken back is left out. */
export async function loadPlantedGardens(
  { tx, nurseryId }: ReadContext,
  lotIds: readonly string[],
): Promise<PlantedGarden[]> {
  return tx.rows(plantedGarden)`
    SELECT o.id::text AS "orderId", o.code AS "orderCode", c.name AS client, s.name AS site, sum(m.from_units)::int AS units, max(e.happened_on)::text AS "lastPlantedOn"
      FROM account f
      JOIN movement m ON m.nursery_id = f.nursery_id AND m.from_account_id = f.id
      JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id AND t.outside = 'planted'
      JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id
      LEFT JOIN LATERAL (SELECT es.subject_id FROM entry_subject es WHERE es.nursery_id = e.nursery_id AND es.entry_id = e.id AND es.subject_kind = 'line' LIMIT 1) about ON f.line_id IS NULL
      LEFT JOIN line_asked n ON n.nursery_id = f.nursery_id AND n.id = coalesce(f.line_id, about.subject_id)
      LEFT JOIN order_named o ON o.nursery_id = n.nursery_id AND o.id = n.order_id
      LEFT JOIN client_named c ON c.nursery_id = o.nursery_id AND c.id = o.client_id
      LEFT JOIN site_named s ON s.nursery_id = o.nursery_id AND s.id = o.site_id
     WHERE f.nursery_id = ${nurseryId}::uuid AND f.lot_id = ANY (${[...lotIds]}::uuid[])
       AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
     GROUP BY o.id, o.code, c.name, s.name ORDER BY max(e.happened_on) DESC, o.code`;
}
