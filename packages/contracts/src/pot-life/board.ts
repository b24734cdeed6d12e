import { POT_BANDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { id, page } from '../fields.ts';

/** The bands of the clock; `no-window` and `winter-carry` are how a plant-by day came about and may lie in any of them. Mother stock stands apart. */
export const BOARD_FILTERS = [...POT_BANDS, 'no-window', 'winter-carry', 'mother-stock'] as const;

export const readBoard = z.strictObject({
  ...page,
  show: z.optional(z.nullable(z.enum(BOARD_FILTERS))),
  kind: z._default(z.enum(['all', 'lot', 'batch']), 'all'),
  plantId: z.optional(z.nullable(id)),
  placeId: z.optional(z.nullable(id)),
  /** Only what nobody was promised yet, and so is free to decline. */
  free: z._default(z.boolean(), false),
});
