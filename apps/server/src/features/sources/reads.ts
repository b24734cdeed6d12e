import { type Page, sources } from '@rootclock/contracts';
import { DAY_PRECISIONS, SOURCE_KINDS, SOURCE_ORIGINS, EVERYONE, nameKey } from '@rootclock/domain';
import * as z from 'zod/mini';
import { containing } from '../../db/like.ts';
import { join, sql, type Sql } from '../../db/sql.ts';
import { query } from '../../trpc/operation.ts';

export const sourceRow = z.strictObject({
  sourceId: z.string(),
  code: z.string(),
  plantId: z.string(),
  plantCode: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  kind: z.enum(SOURCE_KINDS),
  provenance: z.string(),
  seedZone: z.nullable(z.string()),
  origin: z.enum(SOURCE_ORIGINS),
  gatheredOn: z.nullable(z.string()),
  gatheredPrecision: z.nullable(z.enum(DAY_PRECISIONS)),
  vendor: z.nullable(z.string()),
  vendorLot: z.nullable(z.string()),
  retired: z.boolean(),
  /** Grams of seed left; null where none was ever weighed. */
  gramsLeft: z.nullable(z.number()),
  /** The latest test that was not withdrawn; shares 0 to 1. */
  lastTest: z.nullable(z.strictObject({ testedOn: z.string(), meanShare: z.number(), toRepeat: z.boolean() })),
  /** Lots and batches of it of which something is left, and the plants in those lots. */
  openLots: z.number(),
  openBatches: z.number(),
  units: z.number(),
});
export type SourceRow = z.infer<typeof sourceRow>;

const ORDER: Record<(typeof sources.SOURCE_SORTS)[number], Sql> = {
  code: sql`s.code`,
  plant: sql`p.scientific_name`,
  gathered: sql`s.gathered_on`,
  grams: sql`t.grams`,
  units: sql`coalesce(held.units, 0)`,
};

const listedSource = z.strictObject({ ...sourceRow.shape, total: z.number() });

export const listSources = query({
  name: 'listSources',
  input: sources.listSources,
  roles: EVERYONE,
  read: async ({ tx, nurseryId }, input): Promise<Page<SourceRow>> => {
    const conditions = [sql`s.nursery_id = ${nurseryId}::uuid`];
    if (input.state !== 'all')
      conditions.push(input.state === 'open' ? sql`s.retired_at IS NULL` : sql`s.retired_at IS NOT NULL`);
    if (input.plantId) conditions.push(sql`s.plant_id = ${input.plantId}::uuid`);
    if (input.kind) conditions.push(sql`s.kind = ${input.kind}`);
    if (input.text) {
      const text = containing(input.text);
      const key = nameKey(input.text);
      conditions.push(sql`(s.code ILIKE ${text} OR s.provenance ILIKE ${text} OR s.vendor ILIKE ${text} OR s.vendor_lot ILIKE ${text} OR s.collector ILIKE ${text}
        OR s.plant_id IN (SELECT plant_id FROM plant_called WHERE nursery_id = ${nurseryId}::uuid AND ${key !== ''} AND name_key LIKE ${containing(key)})
        OR p.scientific_name ILIKE ${text})`);
    }
    const direction = input.descending ? sql`DESC NULLS LAST` : sql`ASC NULLS LAST`;
    const rows = await tx.rows(listedSource)`
      WITH held AS (
        SELECT l.source_id, count(DISTINCT l.id)::int AS lots, sum(a.units)::int AS units
          FROM units_standing a JOIN lot_named l ON l.nursery_id = a.nursery_id AND l.id = a.lot_id
         WHERE a.nursery_id = ${nurseryId}::uuid AND a.units > 0 GROUP BY l.source_id),
      growing AS (
        SELECT b.source_id, count(*)::int AS batches FROM batch_named b WHERE b.nursery_id = ${nurseryId}::uuid AND b.closed_on IS NULL GROUP BY b.source_id)
      SELECT s.id::text AS "sourceId", s.code, p.id::text AS "plantId", p.code AS "plantCode", p.scientific_name AS "scientificName",
             p.vernacular_name AS "vernacularName", s.kind, s.provenance, s.seed_zone AS "seedZone", s.origin, s.gathered_on::text AS "gatheredOn",
             s.gathered_precision AS "gatheredPrecision", s.vendor, s.vendor_lot AS "vendorLot", s.retired_at IS NOT NULL AS retired,
             t.grams::float8 AS "gramsLeft", v.test AS "lastTest",
             coalesce(held.lots, 0) AS "openLots", coalesce(growing.batches, 0) AS "openBatches", coalesce(held.units, 0) AS units, count(*) OVER ()::int AS total
        FROM source s JOIN plant_named p ON p.nursery_id = s.nursery_id AND p.id = s.plant_id
             LEFT JOIN seed_store t ON t.nursery_id = s.nursery_id AND t.source_id = s.id
             LEFT JOIN LATERAL (
               SELECT jsonb_build_object('testedOn', v.tested_on, 'meanShare', v.mean_share, 'toRepeat', v.to_repeat) AS test FROM viability_test v
                WHERE v.nursery_id = s.nursery_id AND v.source_id = s.id AND v.withdrawn_at IS NULL ORDER BY v.tested_on DESC, v.id LIMIT 1) v ON true
             LEFT JOIN held ON held.source_id = s.id LEFT JOIN growing ON growing.source_id = s.id
       WHERE ${join(conditions, ' AND ')}
       ORDER BY ${ORDER[input.sort]} ${direction}, s.code
       LIMIT ${input.perPage} OFFSET ${(input.page - 1) * input.perPage}`;
    return {
      rows: rows.map(({ total: _total, ...row }) => row),
      total: rows[0]?.total ?? 0,
      page: input.page,
      perPage: input.perPage,
    };
  },
});
