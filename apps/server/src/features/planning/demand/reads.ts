import { type Page, planning } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { join, sql } from '../../../db/sql.ts';
import { query } from '../../../trpc/operation.ts';

const expectedDemandRow = z.strictObject({
  demandId: z.string(),
  edition: z.number(),
  plantId: z.string(),
  plantCode: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  containerId: z.string(),
  containerCode: z.string(),
  containerName: z.string(),
  wantedOn: z.string(),
  units: z.number(),
  unitValueMinor: z.nullable(z.number()),
  note: z.string(),
  isPast: z.boolean(),
  total: z.number(),
});

/** What is expected beyond the orders, by day. */
export const listExpectedDemand = query({
  name: 'listExpectedDemand',
  input: planning.listExpectedDemand,
  roles: EVERYONE,
  read: async (
    { tx, nurseryId, today },
    { state, plantId, wantedFrom, wantedTo, page, perPage },
  ): Promise<Page<planning.ExpectedDemandRow>> => {
    const where = [sql`d.nursery_id = ${nurseryId}::uuid AND d.withdrawn_at IS NULL`];
    if (state !== 'all')
      where.push(state === 'ahead' ? sql`d.wanted_on >= ${today}::date` : sql`d.wanted_on < ${today}::date`);
    if (plantId) where.push(sql`d.plant_id = ${plantId}::uuid`);
    if (wantedFrom) where.push(sql`d.wanted_on >= ${wantedFrom}::date`);
    if (wantedTo) where.push(sql`d.wanted_on <= ${wantedTo}::date`);
    const rows = await tx.rows(expectedDemandRow)`
      SELECT d.id::text AS "demandId", d.edition, d.plant_id::text AS "plantId", p.code AS "plantCode", p.scientific_name AS "scientificName", p.vernacular_name AS "vernacularName",
             d.container_id::text AS "containerId", c.code AS "containerCode", c.name AS "containerName", d.wanted_on::text AS "wantedOn", d.units,
             d.unit_value_minor AS "unitValueMinor", d.note, d.wanted_on < ${today}::date AS "isPast", count(*) OVER ()::int AS total
        FROM expected_demand d
        JOIN plant_named p ON p.nursery_id = d.nursery_id AND p.id = d.plant_id
        JOIN container_named c ON c.nursery_id = d.nursery_id AND c.id = d.container_id
       WHERE ${join(where, ' AND ')}
       ORDER BY d.wanted_on, p.scientific_name, c.name, d.id
       LIMIT ${perPage} OFFSET ${(page - 1) * perPage}`;
    return { rows: rows.map(({ total: _total, ...row }) => row), total: rows[0]?.total ?? 0, page, perPage };
  },
});
