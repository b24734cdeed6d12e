import { type PlantingWindow, seasonEndAhead } from '@rootclock/domain';
import type { ReadContext } from '../../../../trpc/operation.ts';
import { itemOf, type ScopeSupply } from '../scope.ts';

type SupplyRow = Omit<ScopeSupply, 'item' | 'treated'>;

/** Open lots of these items, and batches that are to become them; those named by id as well. Whether they were treated is added only where it is asked for. */
export async function loadSupplies(context: ReadContext, items: readonly string[], ids: readonly string[], asksTreatments: boolean): Promise<ScopeSupply[]> {
  const { tx, nurseryId } = context;
  const pairs = JSON.stringify(items.map((item) => ({ plant: item.split('@')[0], container: item.split('@')[1] })));
  const rows = await tx.$queryRaw<SupplyRow[]>`
    WITH item AS MATERIALIZED (SELECT i.plant, i.container FROM jsonb_to_recordset(${pairs}::jsonb) AS i (plant uuid, container uuid)),
    wanted AS MATERIALIZED (
      SELECT l.id FROM item i JOIN lot l ON l.nursery_id = ${nurseryId}::uuid AND l.plant_id = i.plant AND l.container_id = i.container AND l.closed_on IS NULL
      UNION SELECT l.id FROM lot l WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = ANY (${[...ids]}::uuid[]))
    SELECT l.id::text, 'lot' AS kind, l.code, l.plant_id::text AS "plantId", p.scientific_name AS "scientificName", l.container_id::text AS "containerId", c.code AS "containerCode",
           c.volume_ml AS "containerMl", c.cells, coalesce(a.units, 0)::int AS units, coalesce(a.quarantined, 0)::int AS "quarantinedUnits",
           EXISTS (SELECT 1 FROM hold h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id AND h.released_on IS NULL) AS held,
           coalesce(l.ready_on, l.potted_on)::text AS "readyOn", l.root_checked_on IS NOT NULL AS "rootChecked", l.plant_by_on::text AS "plantByOn", l.plant_by_state AS "plantByState",
           l.limit_on::text AS "limitOn", CASE WHEN r.basis = 'confined' THEN l.confined_on ELSE l.container_on END::text AS "clockOn", s.seed_zone AS "seedZone", s.origin, p.cultivar_epithet IS NOT NULL AS "isCultivar", p.native_regions AS "nativeRegions", s.kind AS "sourceKind", s.pesticide_statement AS "pesticideStatement"
      FROM wanted w
      JOIN lot l ON l.nursery_id = ${nurseryId}::uuid AND l.id = w.id
      JOIN plant p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
      JOIN container c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
      JOIN source s ON s.nursery_id = l.nursery_id AND s.id = l.source_id
      LEFT JOIN pot_life_rule r ON r.nursery_id = l.nursery_id AND r.id = l.rule_id
      LEFT JOIN LATERAL (
        SELECT sum(b.units) FILTER (WHERE k.kind <> 'quarantine') AS units, sum(b.units) FILTER (WHERE k.kind = 'quarantine') AS quarantined
          FROM account b JOIN place k ON k.nursery_id = b.nursery_id AND k.id = b.place_id
         WHERE b.nursery_id = l.nursery_id AND b.lot_id = l.id AND b.units > 0) a ON true
    UNION ALL
    SELECT b.id::text, 'batch', b.code, b.plant_id::text, p.scientific_name, b.target_container_id::text, c.code, c.volume_ml, c.cells, b.cautious_units, 0, false,
           b.ready_on::text, false, b.plant_by_on::text, b.plant_by_state, b.limit_on::text,
           CASE WHEN r.basis = 'confined' THEN b.confined_on ELSE b.container_on END::text, s.seed_zone, s.origin, p.cultivar_epithet IS NOT NULL, p.native_regions, s.kind, s.pesticide_statement
      FROM batch b
      JOIN plant p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id
      JOIN container c ON c.nursery_id = b.nursery_id AND c.id = b.target_container_id
      JOIN source s ON s.nursery_id = b.nursery_id AND s.id = b.source_id
      LEFT JOIN pot_life_rule r ON r.nursery_id = b.nursery_id AND r.id = b.rule_id
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.closed_on IS NULL
       AND ((b.cautious_units > 0 AND EXISTS (SELECT 1 FROM item i WHERE i.plant = b.plant_id AND i.container = b.target_container_id)) OR b.id = ANY (${[...ids]}::uuid[]))`;
  const treated = asksTreatments ? await loadTreated(context, rows.map(({ id }) => id)) : new Set<string>();
  return rows.map((row) => ({ ...row, item: itemOf(row.plantId, row.containerId), treated: treated.has(row.id) }));
}

/**
 * Which of these lots and batches were treated, here or while they were still part of what they came from, packs that a batch was drawn from included. A treatment of an ancestor counts up to
 * the last day on which plants were taken from it, that day included; one that was reversed does not count. Each step asks for its own few
 * rows: OFFSET 0 and LIMIT keep the planner from reckoning all lineage of a long history first, which took longer than a command may.
 */
async function loadTreated({ tx, nurseryId }: ReadContext, ids: readonly string[]): Promise<Set<string>> {
  const rows = await tx.$queryRaw<{ id: string }[]>`
    WITH RECURSIVE line_of (id, ancestor, until) AS (
      SELECT s.id, s.id, NULL::date FROM unnest(${[...ids]}::uuid[]) AS s (id)
      UNION
      SELECT d.id, fed.parent_id, least(d.until, fed.last_on)
        FROM line_of d
        CROSS JOIN LATERAL (
          SELECT g.parent_id, (
            SELECT max(e.happened_on)
              FROM account f JOIN movement m ON m.nursery_id = f.nursery_id AND m.from_account_id = f.id
              JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id AND t.lot_id = g.child_lot_id
              JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id AND e.kind <> 'reverse'
             WHERE f.nursery_id = ${nurseryId}::uuid AND (f.lot_id = g.parent_id OR f.batch_id = g.parent_id)) AS last_on
            FROM lineage g WHERE g.nursery_id = ${nurseryId}::uuid AND g.child_lot_id = d.ancestor
          UNION ALL
          SELECT b.parent_batch_id, b.started_on FROM batch b WHERE b.nursery_id = ${nurseryId}::uuid AND b.id = d.ancestor AND b.parent_batch_id IS NOT NULL
          OFFSET 0) fed)
    SELECT DISTINCT d.id::text
      FROM line_of d
      CROSS JOIN LATERAL (
        SELECT FROM entry_subject s JOIN entry e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id AND e.kind = 'treat'
         WHERE s.nursery_id = ${nurseryId}::uuid AND s.subject_id = d.ancestor AND (d.until IS NULL OR e.happened_on <= d.until)
           AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
         LIMIT 1) treated`;
  return new Set(rows.map(({ id }) => id));
}

export interface Season {
  horizonOn: string;
  windows: PlantingWindow[];
}

/** The stored end of the season, or where that has passed and the day is not rolled yet the next one, and the planting windows if one of these regions has its own. */
export async function loadSeason({ tx, nurseryId, today }: ReadContext, regions: readonly string[]): Promise<Season> {
  const [row] = await tx.$queryRaw<Season[]>`
    SELECT n.season_end_on::text AS "horizonOn",
           coalesce((SELECT jsonb_agg(jsonb_build_object('id', w.id, 'opensMd', w.opens_md, 'closesMd', w.closes_md, 'maxContainerMl', w.max_container_ml, 'region', w.region))
                       FROM planting_window w
                      WHERE w.nursery_id = n.id AND w.retired_at IS NULL
                        AND EXISTS (SELECT 1 FROM planting_window x WHERE x.nursery_id = n.id AND x.retired_at IS NULL AND x.region = ANY (${[...regions]}::text[]))), '[]') AS windows
      FROM nursery n WHERE n.id = ${nurseryId}::uuid`;
  if (!row) throw new Error('the nursery of this transaction is gone');
  return { ...row, horizonOn: seasonEndAhead(row.horizonOn, today) };
}
