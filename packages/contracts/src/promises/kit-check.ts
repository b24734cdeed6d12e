import * as z from 'zod/mini';
import { calendarDate, id } from '../fields.ts';
import type { KitComponentRow } from '../orders/kits.ts';

/** How many whole kits could be promised for a day without shortening anybody. */
export const checkKit = z.strictObject({
  kitId: id,
  on: calendarDate,
  siteId: z._default(z.nullable(id), null),
  clientId: z._default(z.nullable(id), null),
  nativesOnly: z._default(z.boolean(), false),
});

export interface KitCheck {
  on: string;
  /** Whole kits. */
  kits: number;
  /** How many of each component could be promised if nothing else of the kit were asked for. */
  components: (KitComponentRow & { promisableUnits: number })[];
}
