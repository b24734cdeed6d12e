import { potLife } from '@rootclock/contracts';
import { POT_LIFE_BASES, POT_LIFE_REACHES, ROOT_HABITS, STANDINGS, EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query } from '../../../trpc/operation.ts';

const listedRule = z.strictObject({
  id: z.string(),
  edition: z.number(),
  basis: z.enum(POT_LIFE_BASES),
  span: z.nullable(z.string()),
  reach: z.enum(POT_LIFE_REACHES),
  lotId: z.nullable(z.string()),
  lotCode: z.nullable(z.string()),
  plantId: z.nullable(z.string()),
  scientificName: z.nullable(z.string()),
  containerId: z.nullable(z.string()),
  containerName: z.nullable(z.string()),
  genus: z.nullable(z.string()),
  rootHabit: z.nullable(z.enum(ROOT_HABITS)),
  winterCarry: z.nullable(z.strictObject({ maxDays: z.number(), graceDays: z.number() })),
  standing: z.enum(STANDINGS),
  source: z.nullable(z.string()),
  note: z.string(),
  binds: z.number(),
});

/** All rules that count, the most particular first. About a hundred, so the list is not paged. */
export const listRules = query({
  name: 'listRules',
  input: potLife.listRules,
  roles: EVERYONE,
  read: ({ tx, nurseryId }) => tx.rows(listedRule)`
    WITH binding AS (
      SELECT rule_id, count(*)::int AS subjects
        FROM (SELECT rule_id FROM lot_told WHERE nursery_id = ${nurseryId}::uuid AND closed_on IS NULL
              UNION ALL SELECT rule_id FROM batch_told WHERE nursery_id = ${nurseryId}::uuid AND closed_on IS NULL) bound
       GROUP BY rule_id)
    SELECT r.id::text, r.edition, r.basis, r.span,
           CASE WHEN r.lot_id IS NOT NULL THEN 'lot' WHEN r.plant_id IS NOT NULL AND r.container_id IS NOT NULL THEN 'plant-container' WHEN r.plant_id IS NOT NULL THEN 'plant'
                WHEN r.genus IS NOT NULL THEN 'genus' WHEN r.container_id IS NOT NULL THEN 'root-habit-container' ELSE 'root-habit' END AS reach,
           r.lot_id::text AS "lotId", l.code AS "lotCode", r.plant_id::text AS "plantId", p.scientific_name AS "scientificName",
           r.container_id::text AS "containerId", c.name AS "containerName", r.genus, r.root_habit AS "rootHabit",
           CASE WHEN r.carry_max_days IS NULL THEN NULL ELSE jsonb_build_object('maxDays', r.carry_max_days, 'graceDays', r.carry_grace_days) END AS "winterCarry",
           r.standing, r.source, r.note, coalesce(b.subjects, 0) AS binds
      FROM pot_life_rule r
      LEFT JOIN lot_named l ON l.nursery_id = r.nursery_id AND l.id = r.lot_id
      LEFT JOIN plant_named p ON p.nursery_id = r.nursery_id AND p.id = r.plant_id
      LEFT JOIN container_named c ON c.nursery_id = r.nursery_id AND c.id = r.container_id
      LEFT JOIN binding b ON b.rule_id = r.id
     WHERE r.nursery_id = ${nurseryId}::uuid AND r.retired_at IS NULL
     ORDER BY num_nonnulls(r.lot_id) DESC, num_nonnulls(r.plant_id) DESC, num_nonnulls(r.genus) DESC, r.container_id IS NOT NULL,
              c.volume_ml NULLS LAST, c.code, r.root_habit, r.basis, l.code, p.scientific_name, r.genus, r.id`,
});
