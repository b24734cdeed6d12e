import { type Page, propagation } from '@rootclock/contracts';
import {
  BATCH_UNITS,
  PLANT_BY_STATES,
  PROPAGATION_METHODS,
  STAGE_KINDS,
  daysBetween,
  EVERYONE,
  nameKey,
  type PotBand,
  potBand,
} from '@rootclock/domain';
import * as z from 'zod/mini';
import { containing } from '../../../db/like.ts';
import { join, sql, type Sql } from '../../../db/sql.ts';
import { query } from '../../../trpc/operation.ts';

const storedBatch = z.strictObject({
  batchId: z.string(),
  code: z.string(),
  plantId: z.string(),
  plantCode: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  method: z.enum(PROPAGATION_METHODS),
  unit: z.enum(BATCH_UNITS),
  containerCode: z.nullable(z.string()),
  containerName: z.nullable(z.string()),
  startedOn: z.string(),
  startedUnits: z.number(),
  standingUnits: z.number(),
  placeCodes: z.array(z.string()),
  /** Plants alive at the last count, and its day. */
  emergedUnits: z.nullable(z.number()),
  emergedOn: z.nullable(z.string()),
  confinedOn: z.nullable(z.string()),
  containerOn: z.nullable(z.string()),
  targetContainerId: z.nullable(z.string()),
  targetContainerName: z.nullable(z.string()),
  cautiousUnits: z.number(),
  reservedUnits: z.number(),
  usualUnits: z.number(),
  readyOn: z.nullable(z.string()),
  /** Where it is in its protocol; null without one. */
  stageKind: z.nullable(z.enum(STAGE_KINDS)),
  stageBegunOn: z.nullable(z.string()),
  /** The usual end of the stage, when the next should begin. */
  stageDueOn: z.nullable(z.string()),
  /** Whether it has been in the stage for longer than its long duration. */
  stageLate: z.boolean(),
  plantByOn: z.nullable(z.string()),
  plantByState: z.enum(PLANT_BY_STATES),
  limitOn: z.nullable(z.string()),
  secondWinterOn: z.nullable(z.string()),
  closedOn: z.nullable(z.string()),
  dormantNow: z.boolean(),
});
type StoredRow = z.infer<typeof storedBatch>;

export interface BatchRow extends StoredRow {
  daysSinceStart: number;
  /** Since the first count that found anything alive; null before. */
  daysSinceConfined: number | null;
  band: PotBand;
  daysLeft: number | null;
}

const ORDER: Record<(typeof propagation.BATCH_SORTS)[number], Sql> = {
  plantBy: sql`b.plant_by_on`,
  startedOn: sql`b.started_on`,
  readyOn: sql`b.ready_on`,
  plant: sql`p.scientific_name`,
  code: sql`b.code`,
  units: sql`standing.units`,
  stageDue: sql`b.stage_due_on`,
};

const listedBatch = z.strictObject({ ...storedBatch.shape, total: z.number(), noticeDays: z.number() });

export const listBatches = query({
  name: 'listBatches',
  input: propagation.listBatches,
  roles: EVERYONE,
  read: async ({ tx, nurseryId, today }, input): Promise<Page<BatchRow>> => {
    const where = [sql`b.nursery_id = ${nurseryId}::uuid`];
    if (input.state !== 'all')
      where.push(input.state === 'open' ? sql`b.closed_on IS NULL` : sql`b.closed_on IS NOT NULL`);
    if (input.method) where.push(sql`b.method = ${input.method}`);
    if (input.plantId) where.push(sql`b.plant_id = ${input.plantId}::uuid`);
    if (input.placeId)
      where.push(
        sql`EXISTS (SELECT 1 FROM units_standing x WHERE x.nursery_id = b.nursery_id AND x.batch_id = b.id AND x.place_id = ${input.placeId}::uuid AND x.units > 0)`,
      );
    if (input.text) {
      const key = nameKey(input.text);
      where.push(sql`(b.code ILIKE ${containing(input.text)} OR p.scientific_name ILIKE ${containing(input.text)}
        OR b.plant_id IN (SELECT plant_id FROM plant_called WHERE nursery_id = ${nurseryId}::uuid AND ${key !== ''} AND name_key LIKE ${containing(key)}))`);
    }
    const direction = input.descending ? sql`DESC NULLS LAST` : sql`ASC NULLS LAST`;
    const rows = await tx.rows(listedBatch)`
      SELECT b.id::text AS "batchId", b.code, p.id::text AS "plantId", p.code AS "plantCode", p.scientific_name AS "scientificName", p.vernacular_name AS "vernacularName",
             b.method, b.unit, c.code AS "containerCode", c.name AS "containerName", b.started_on::text AS "startedOn", coalesce(begun.units, 0) AS "startedUnits",
             standing.units AS "standingUnits", standing.places AS "placeCodes", b.emerged_units AS "emergedUnits", b.emerged_on::text AS "emergedOn",
             b.confined_on::text AS "confinedOn", b.container_on::text AS "containerOn", b.target_container_id::text AS "targetContainerId", t.name AS "targetContainerName",
             b.cautious_units AS "cautiousUnits",
             coalesce((SELECT sum(r.units)::int FROM units_reserved r WHERE r.nursery_id = b.nursery_id AND r.batch_id = b.id), 0) AS "reservedUnits",
             b.usual_units AS "usualUnits", b.ready_on::text AS "readyOn", b.stage_kind AS "stageKind", b.stage_begun_on::text AS "stageBegunOn", b.stage_due_on::text AS "stageDueOn",
             b.closed_on IS NULL AND coalesce(b.stage_late_on < ${today}::date, false) AS "stageLate", b.plant_by_on::text AS "plantByOn", b.plant_by_state AS "plantByState", b.limit_on::text AS "limitOn",
             b.second_winter_on::text AS "secondWinterOn", b.closed_on::text AS "closedOn",
             extract(month FROM ${today}::date)::int = ANY (p.dormant_months) AS "dormantNow", n.notice_days AS "noticeDays", count(*) OVER ()::int AS total
        FROM batch_told b
        JOIN nursery_settings n ON n.id = b.nursery_id
        JOIN plant_named p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id
        LEFT JOIN container_named c ON c.nursery_id = b.nursery_id AND c.id = b.container_id
        LEFT JOIN container_named t ON t.nursery_id = b.nursery_id AND t.id = b.target_container_id
        JOIN LATERAL (SELECT coalesce(sum(a.units), 0)::int AS units, coalesce(array_agg(w.code ORDER BY w.code) FILTER (WHERE a.units > 0), '{}') AS places
                        FROM units_standing a JOIN place_named w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
                       WHERE a.nursery_id = b.nursery_id AND a.batch_id = b.id AND a.units > 0) standing ON true
        LEFT JOIN LATERAL (SELECT sum(m.to_units)::int AS units FROM movement_told m WHERE m.nursery_id = b.nursery_id AND m.entry_id = b.created_entry_id) begun ON true
       WHERE ${join(where, ' AND ')}
       ORDER BY ${ORDER[input.sort]} ${direction}, b.code
       LIMIT ${input.perPage} OFFSET ${(input.page - 1) * input.perPage}`;
    return {
      rows: rows.map(({ total: _total, noticeDays, ...row }) => ({
        ...row,
        ...potBand(row.closedOn ? null : row.plantByOn, today, noticeDays),
        daysSinceStart: daysBetween(row.startedOn, today),
        daysSinceConfined: row.confinedOn ? daysBetween(row.confinedOn, today) : null,
      })),
      total: rows[0]?.total ?? 0,
      page: input.page,
      perPage: input.perPage,
    };
  },
});
