import * as z from 'zod/mini';
import { id } from '../fields.ts';

/** How sure to be that each batch gives what it is to give; the nursery's own setting unless given. */
const confidence = z._default(z.nullable(z.number().check(z.gte(0.5), z.lte(0.999))), null);

export const readPlan = z.strictObject({ confidence });

/** Supply and demand of one item by week. Without an item only the items there are to choose from. */
export const readOutlook = z.strictObject({
  item: z._default(z.nullable(z.strictObject({ plantId: id, containerId: id })), null),
  weeks: z._default(z.int().check(z.gte(4), z.lte(104)), 52),
});
