import { type Page, sources } from '@rootclock/contracts';
import { EVERYONE, nameKey, type DayPrecision, type SourceKind, type SourceOrigin } from '@rootclock/domain';
import { Prisma } from '../../db/generated/client.ts';
import { containing } from '../../db/like.ts';
import { query } from '../../trpc/operation.ts';

export interface SourceRow {
  sourceId: string;
  code: string;
  plantId: string;
  plantCode: string;
  scientificName: string;
  vernacularName: string;
  kind: SourceKind;
  provenance: string;
  seedZone: string | null;
  origin: SourceOrigin;
  gatheredOn: string | null;
  gatheredPrecision: DayPrecision | null;
  vendor: string | null;
  vendorLot: string | null;
  retired: boolean;
  /** Grams of seed left; null where none was ever weighed. */
  gramsLeft: number | null;
  /** The latest test that was not withdrawn; shares 0 to 1. */
  lastTest: { testedOn: string; meanShare: number; toRepeat: boolean } | null;
  /** Lots and batches of it of which something is left, and the plants in those lots. */
  openLots: number;
  openBatches: number;
  units: number;
}

const ORDER: Record<(typeof sources.SOURCE_SORTS)[number], Prisma.Sql> = {
  code: Prisma.sql`s.code`,
  plant: Prisma.sql`p.scientific_name`,
  gathered: Prisma.sql`s.gathered_on`,
  grams: Prisma.sql`t.grams`,
  units: Prisma.sql`coalesce(held.units, 0)`,
};

export const listSources = query({
  name: 'listSources',
  input: sources.listSources,
  roles: EVERYONE,
  read: async ({ tx, nurseryId }, input): Promise<Page<SourceRow>> => {
    const conditions = [Prisma.sql`s.nursery_id = ${nurseryId}::uuid`];
    if (input.state !== 'all')
      conditions.push(input.state === 'open' ? Prisma.sql`s.retired_at IS NULL` : Prisma.sql`s.retired_at IS NOT NULL`);
    if (input.plantId) conditions.push(Prisma.sql`s.plant_id = ${input.plantId}::uuid`);
    if (input.kind) conditions.push(Prisma.sql`s.kind = ${input.kind}`);
    if (input.text) {
      const text = containing(input.text);
      const key = nameKey(input.text);
      conditions.push(Prisma.sql`(s.code ILIKE ${text} OR s.provenance ILIKE ${text} OR s.vendor ILIKE ${text} OR s.vendor_lot ILIKE ${text} OR s.collector ILIKE ${text}
        OR s.plant_id IN (SELECT plant_id FROM plant_name WHERE nursery_id = ${nurseryId}::uuid AND ${key !== ''} AND name_key LIKE ${containing(key)})
        OR p.scientific_name ILIKE ${text})`);
    }
    const direction = input.descending ? Prisma.sql`DESC NULLS LAST` : Prisma.sql`ASC NULLS LAST`;
    const rows = await tx.$queryRaw<(SourceRow & { total: number })[]>`
      WITH held AS (
        SELECT l.source_id, count(DISTINCT l.id)::int AS lots, sum(a.units)::int AS units
          FROM account a JOIN lot l ON l.nursery_id = a.nursery_id AND l.id = a.lot_id
         WHERE a.nursery_id = ${nurseryId}::uuid AND a.units > 0 GROUP BY l.source_id),
      growing AS (
        SELECT b.source_id, count(*)::int AS batches FROM batch b WHERE b.nursery_id = ${nurseryId}::uuid AND b.closed_on IS NULL GROUP BY b.source_id)
      SELECT s.id::text AS "sourceId", s.code, p.id::text AS "plantId", p.code AS "plantCode", p.scientific_name AS "scientificName",
             p.vernacular_name AS "vernacularName", s.kind, s.provenance, s.seed_zone AS "seedZone", s.origin, s.gathered_on::text AS "gatheredOn",
             s.gathered_precision AS "gatheredPrecision", s.vendor, s.vendor_lot AS "vendorLot", s.retired_at IS NOT NULL AS retired,
             t.grams::float8 AS "gramsLeft", v.test AS "lastTest",
             coalesce(held.lots, 0) AS "openLots", coalesce(growing.batches, 0) AS "openBatches", coalesce(held.units, 0) AS units, count(*) OVER ()::int AS total
        FROM source s JOIN plant p ON p.nursery_id = s.nursery_id AND p.id = s.plant_id
             LEFT JOIN seed_store t ON t.nursery_id = s.nursery_id AND t.source_id = s.id
             LEFT JOIN LATERAL (
               SELECT jsonb_build_object('testedOn', v.tested_on, 'meanShare', v.mean_share, 'toRepeat', v.to_repeat) AS test FROM viability_test v
                WHERE v.nursery_id = s.nursery_id AND v.source_id = s.id AND v.withdrawn_at IS NULL ORDER BY v.tested_on DESC, v.id LIMIT 1) v ON true
             LEFT JOIN held ON held.source_id = s.id LEFT JOIN growing ON growing.source_id = s.id
       WHERE ${Prisma.join(conditions, ' AND ')}
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
