import { type Page, promises } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query } from '../../../trpc/operation.ts';

const shortRow = z.strictObject({
  row: z.strictObject({
    lineId: z.string(),
    orderId: z.string(),
    orderCode: z.string(),
    orderKind: z.string(),
    clientName: z.string(),
    siteName: z.nullable(z.string()),
    dueOn: z.string(),
    plantId: z.string(),
    scientificName: z.string(),
    containerCode: z.string(),
    units: z.number(),
    filledUnits: z.number(),
    shortUnits: z.number(),
  }),
  total: z.number(),
});

/** Every open line that is short, the nearest day first. */
export const listShort = query({
  name: 'listShort',
  input: promises.listShort,
  roles: EVERYONE,
  read: async ({ tx, nurseryId }, { page, perPage }): Promise<Page<promises.ShortRow>> => {
    const rows = await tx.rows(shortRow)`
      SELECT jsonb_build_object('lineId', l.id, 'orderId', o.id, 'orderCode', o.code, 'orderKind', o.kind, 'clientName', k.name, 'siteName', t.name, 'dueOn', o.due_on,
               'plantId', l.plant_id, 'scientificName', p.scientific_name, 'containerCode', c.code, 'units', l.units, 'filledUnits', g.filled, 'shortUnits', l.units - g.filled) AS row,
             count(*) OVER ()::int AS total
        FROM order_named o
        JOIN line_asked l ON l.nursery_id = o.nursery_id AND l.order_id = o.id AND l.withdrawn_on IS NULL
        CROSS JOIN LATERAL (SELECT s.reserved_units + s.staged_units + s.delivered_units AS filled FROM line_progress s WHERE s.nursery_id = l.nursery_id AND s.line_id = l.id OFFSET 0) g
        JOIN client_named k ON k.nursery_id = o.nursery_id AND k.id = o.client_id
        LEFT JOIN site_named t ON t.nursery_id = o.nursery_id AND t.id = o.site_id
        JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
        JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
       WHERE o.nursery_id = ${nurseryId}::uuid AND o.state = 'open' AND l.units > g.filled
       ORDER BY o.due_on, o.code, l.rank
       LIMIT ${perPage} OFFSET ${(page - 1) * perPage}`;
    return { rows: rows.map(({ row }) => row), total: rows[0]?.total ?? 0, page, perPage };
  },
});
