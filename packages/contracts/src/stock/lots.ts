import { LOSS_CAUSES } from '@rootclock/domain';
import * as z from 'zod/mini';
import { calendarDate, id, longText, units } from '../fields.ts';

/** Plants of a lot that are gone. `placeId` is needed only where the lot stands in several places. */
export const loseFromLot = z.strictObject({
  lotId: id,
  units,
  placeId: z.optional(z.nullable(id)),
  cause: z.enum(LOSS_CAUSES),
  happenedOn: calendarDate,
  note: z._default(longText, ''),
  /** Said once more after the screen has asked whether the plant may only be dormant. */
  confirmed: z._default(z.boolean(), false),
});
