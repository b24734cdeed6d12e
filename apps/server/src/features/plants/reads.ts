import { plants, type Page } from '@rootclock/contracts';
import { HANDLING_RULES, ROOT_HABITS, TAXON_RANKS, EVERYONE, nameKey } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query } from '../../trpc/operation.ts';

const pageOfPlants = z.strictObject({
  rows: z.array(
    z.strictObject({
      scientificNameAuthorship: z.string(),
      taxonRank: z.enum(TAXON_RANKS),
      family: z.string(),
      handling: z.array(z.enum(HANDLING_RULES)),
      isRetired: z.boolean(),
      units: z.number(),
      lots: z.number(),
      id: z.string(),
      code: z.string(),
      scientificName: z.string(),
      vernacularName: z.string(),
      rootHabit: z.enum(ROOT_HABITS),
      larvalHost: z.boolean(),
    }),
  ),
  total: z.number(),
});

/** The plants of the nursery, each with what stands of it in pots. */
export const listPlants = query({
  name: 'listPlants',
  input: plants.listPlants,
  roles: EVERYONE,
  read: async (
    { tx, nurseryId },
    { text, rootHabit = null, larvalHost = null, retired, sort, descending, page, perPage },
  ): Promise<Page<plants.PlantRow>> => {
    const key = nameKey(text ?? '');
    // Letters only: a text without any must not become a code that all plants have.
    const letters = (text ?? '').replace(/[^A-Za-z]/g, '').toUpperCase();
    const code = letters === '' ? '' : `${letters}%`;
    const found = await tx.row(pageOfPlants)`
      WITH standing AS (
        SELECT l.plant_id, sum(a.units)::int AS units, count(DISTINCT l.id)::int AS lots
          FROM lot_named l JOIN units_standing a ON a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'place' AND a.units > 0
         WHERE l.nursery_id = ${nurseryId}::uuid AND l.closed_on IS NULL GROUP BY l.plant_id),
      matching AS (
        SELECT p.id, p.code, p.scientific_name AS "scientificName", p.scientific_name_authorship AS "scientificNameAuthorship", p.taxon_rank AS "taxonRank", p.family,
               p.vernacular_name AS "vernacularName", p.root_habit AS "rootHabit", p.larval_host AS "larvalHost", p.handling, p.retired_at IS NOT NULL AS "isRetired",
               coalesce(s.units, 0) AS units, coalesce(s.lots, 0) AS lots
          FROM plant p LEFT JOIN standing s ON s.plant_id = p.id
         WHERE p.nursery_id = ${nurseryId}::uuid AND (p.retired_at IS NOT NULL) = ${retired}
           AND (${rootHabit}::text IS NULL OR p.root_habit = ${rootHabit}) AND (${larvalHost}::boolean IS NULL OR p.larval_host = ${larvalHost})
           AND (${key} = '' OR p.code LIKE ${code} OR EXISTS (SELECT 1 FROM plant_name n WHERE n.nursery_id = p.nursery_id AND n.plant_id = p.id
                  AND (n.name_key LIKE ${`${key}%`} OR n.name_key LIKE ${`% ${key}%`})))),
      page AS (
        SELECT *, row_number() OVER (ORDER BY CASE WHEN ${sort} = 'units' THEN CASE WHEN ${descending} THEN -units ELSE units END END,
                                              CASE WHEN ${sort} = 'name' AND ${descending} THEN "scientificName" END DESC, "scientificName") AS place
          FROM matching ORDER BY place LIMIT ${perPage} OFFSET ${(page - 1) * perPage})
      SELECT (SELECT count(*)::int FROM matching) AS total,
             coalesce((SELECT jsonb_agg(to_jsonb(page) - 'place' ORDER BY place) FROM page), '[]') AS rows`;
    return { rows: found?.rows ?? [], total: found?.total ?? 0, page, perPage };
  },
});
