import { HOLD_REASONS, POT_BANDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { id, page, text } from '../fields.ts';

export const LOT_SORTS = ['code', 'plant', 'plantBy', 'units', 'free', 'potted'] as const;
/** The bands of the clock, and `no-window`: the plant-by day is the bare limit because no planting window is left before it. */
export const LOT_BANDS = [...POT_BANDS, 'no-window'] as const;

export const listLots = z.strictObject({
  ...page,
  /** Part of a lot's code or of any name of its plant. */
  text: z._default(text(z.trim(), z.maxLength(120)), ''),
  plantId: z.optional(z.nullable(id)),
  containerId: z.optional(z.nullable(id)),
  /** A place with all that lies in it. */
  placeId: z.optional(z.nullable(id)),
  sourceId: z.optional(z.nullable(id)),
  state: z._default(z.enum(['open', 'closed', 'all']), 'open'),
  /** `any` hold, none, or one reason. */
  held: z.optional(z.nullable(z.enum(['any', 'none', ...HOLD_REASONS]))),
  band: z.optional(z.nullable(z.enum(LOT_BANDS))),
  /** Only lots of which something may still be promised: units left over and no hold. */
  free: z._default(z.boolean(), false),
  sort: z._default(z.enum(LOT_SORTS), 'plantBy'),
  descending: z._default(z.boolean(), false),
});
