import { STANDINGS, SUBSTITUTION_KINDS, type SubstitutePlant } from '@rootclock/domain';
import * as z from 'zod/mini';
import { found } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';

const ruleRow = z.strictObject({
  id: z.string(),
  edition: z.number(),
  genus: z.nullable(z.string()),
  kind: z.enum(SUBSTITUTION_KINDS),
  plantId: z.nullable(z.string()),
  scientificName: z.nullable(z.string()),
  penalty: z.number(),
  standing: z.enum(STANDINGS),
  note: z.string(),
});
type RuleRow = z.infer<typeof ruleRow>;

/** All rules that count, by kind, the widest reach first. */
export async function readRules({ tx, nurseryId }: ReadContext): Promise<RuleRow[]> {
  return tx.rows(ruleRow)`
    SELECT r.id::text, r.edition, r.kind, r.plant_id::text AS "plantId", p.scientific_name AS "scientificName", r.genus, r.penalty, r.standing, r.note
      FROM substitution_rule r LEFT JOIN plant_named p ON p.nursery_id = r.nursery_id AND p.id = r.plant_id
     WHERE r.nursery_id = ${nurseryId}::uuid AND r.retired_on IS NULL
     ORDER BY array_position(ARRAY['another-size', 'same-genus', 'same-habit'], r.kind), num_nonnulls(r.plant_id), num_nonnulls(r.genus), lower(r.genus), p.scientific_name`;
}

const knownPlant = z.strictObject({
  plantId: z.string(),
  scientificName: z.string(),
  genus: z.string(),
  nativeRegions: z.array(z.string()),
  heightCm: z.nullable(z.tuple([z.number(), z.number()])),
  light: z.nullable(z.string()),
  bloomMonths: z.nullable(z.array(z.number())),
});

/** Plants that can stand in for each other, and those asked for whatever their state, each with what its page tells of its habit. */
export async function readSubstitutePlants(
  { tx, nurseryId }: ReadContext,
  askedId: string | null = null,
): Promise<SubstitutePlant[]> {
  return tx.rows(knownPlant)`
    SELECT p.id::text AS "plantId", p.scientific_name AS "scientificName", p.genus, p.native_regions AS "nativeRegions",
           nullif(h.value, 'null') AS "heightCm", s.value #>> '{}' AS light, nullif(b.value, 'null') AS "bloomMonths"
      FROM plant_named p
      LEFT JOIN plant_told h ON h.nursery_id = p.nursery_id AND h.plant_id = p.id AND h.field = 'heightCm'
      LEFT JOIN plant_told s ON s.nursery_id = p.nursery_id AND s.plant_id = p.id AND s.field = 'sun'
      LEFT JOIN plant_told b ON b.nursery_id = p.nursery_id AND b.plant_id = p.id AND b.field = 'bloomMonths'
     WHERE p.nursery_id = ${nurseryId}::uuid AND (p.retired_at IS NULL OR p.id = ${askedId}::uuid)`;
}

export const standingItem = z.strictObject({
  plantId: z.string(),
  containerId: z.string(),
  containerName: z.string(),
  onHandUnits: z.number(),
  growingUnits: z.number(),
});
export type StandingItem = z.infer<typeof standingItem>;

const askedContainer = z.strictObject({ kind: z.string(), cells: z.nullable(z.number()) });

/** What the nursery has or grows in containers that may stand in for one, of the same kind and cells: open lots on hand outside quarantine, and batches that are to become them. */
export async function readStandingItems({ tx, nurseryId }: ReadContext, containerId: string): Promise<StandingItem[]> {
  const asked = await tx.row(
    askedContainer,
  )`SELECT kind, cells FROM container_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${containerId}::uuid`;
  const { kind, cells } = found(asked, 'container', 'containerId');
  return tx.rows(standingItem)`
    WITH had AS (
      SELECT l.plant_id, l.container_id, a.units AS on_hand, 0 AS growing
        FROM lot_named l JOIN units_standing a ON a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'place' AND a.units > 0
        JOIN place_named w ON w.nursery_id = a.nursery_id AND w.id = a.place_id AND w.kind <> 'quarantine'
       WHERE l.nursery_id = ${nurseryId}::uuid AND l.closed_on IS NULL
      UNION ALL
      SELECT plant_id, target_container_id, 0, cautious_units FROM batch_named WHERE nursery_id = ${nurseryId}::uuid AND closed_on IS NULL AND cautious_units > 0)
    SELECT h.plant_id::text AS "plantId", c.id::text AS "containerId", c.name AS "containerName", sum(h.on_hand)::int AS "onHandUnits", sum(h.growing)::int AS "growingUnits"
      FROM had h
      JOIN container_named c ON c.nursery_id = ${nurseryId}::uuid AND c.id = h.container_id AND c.kind = ${kind} AND c.cells IS NOT DISTINCT FROM ${cells}::int AND c.retired_at IS NULL
     GROUP BY h.plant_id, c.id, c.name`;
}
