import { plants } from '@rootclock/contracts';
import { CONTAINER_KINDS, STANDINGS, EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query } from '../../../trpc/operation.ts';

const listedContainer = z.strictObject({
  id: z.string(),
  edition: z.number(),
  code: z.string(),
  name: z.string(),
  kind: z.enum(CONTAINER_KINDS),
  volumeMl: z.nullable(z.number()),
  depthMm: z.nullable(z.number()),
  widthMm: z.nullable(z.number()),
  lengthMm: z.nullable(z.number()),
  cells: z.nullable(z.number()),
  tradeClass: z.nullable(z.string()),
  standing: z.enum(STANDINGS),
  source: z.nullable(z.string()),
  note: z.string(),
  isRetired: z.boolean(),
  inUse: z.number(),
});

/** All containers, smallest first within their kind; a few dozen, so the list is not paged. */
export const listContainers = query({
  name: 'listContainers',
  input: plants.listContainers,
  roles: EVERYONE,
  read: ({ tx, nurseryId }, { retired }) => tx.rows(listedContainer)`
    SELECT c.id::text, c.edition, c.code, c.name, c.kind, c.volume_ml AS "volumeMl", c.depth_mm AS "depthMm", c.width_mm AS "widthMm", c.length_mm AS "lengthMm", c.cells,
           c.trade_class AS "tradeClass", c.standing, c.source, coalesce(c.note, '') AS note, c.retired_at IS NOT NULL AS "isRetired",
           coalesce(l.lots, 0) + coalesce(b.batches, 0) AS "inUse"
      FROM container c
      LEFT JOIN (SELECT container_id, count(*)::int AS lots FROM lot_told WHERE nursery_id = ${nurseryId}::uuid AND closed_on IS NULL GROUP BY 1) l ON l.container_id = c.id
      LEFT JOIN (SELECT container_id, count(*)::int AS batches FROM batch_told WHERE nursery_id = ${nurseryId}::uuid AND closed_on IS NULL GROUP BY 1) b ON b.container_id = c.id
     WHERE c.nursery_id = ${nurseryId}::uuid AND (${retired} OR c.retired_at IS NULL)
     ORDER BY array_position(ARRAY['tray', 'pot', 'flat', 'ground'], c.kind), c.volume_ml NULLS LAST, c.code`,
});
