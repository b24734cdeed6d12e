import { LOSS_CAUSES } from '@rootclock/domain';
import * as z from 'zod/mini';
import { calendarDate, id, longText, units, unitsOrNone } from '../fields.ts';

const rows = <Row extends z.ZodMiniType>(row: Row) => z.array(row).check(z.minLength(1), z.maxLength(500));

const entry = { orderId: id, happenedOn: calendarDate, note: z._default(longText, '') };

/** Pins what is reserved from lots, so that the list stays true while the crew walks it. */
export const issuePullList = z.strictObject({ orderId: id });

export const readPullList = z.strictObject({ orderId: id });

/** From their places to the staging of this order. `confirmed` says that lots whose root balls were never checked are pulled all the same. */
export const pullForOrder = z.strictObject({
  ...entry,
  rows: rows(z.strictObject({ lineId: id, lotId: id, placeId: id, units })),
  confirmed: z._default(z.boolean(), false),
});

const extra = z.discriminatedUnion('from', [
  z.strictObject({ from: z.literal('place'), placeId: id, units }),
  z.strictObject({ from: z.literal('found'), units }),
]);

/**
 * Plants put into the ground: `units` of those that were pulled, and as `extra` those that never were, from the lot at a place or found
 * (they stood there though the books did not know them).
 */
export const plantOrder = z.strictObject({
  ...entry,
  rows: rows(
    z
      .strictObject({ lineId: id, lotId: id, units: unitsOrNone, extra: z._default(z.nullable(extra), null) })
      .check(
        z.refine((row) => row.units > 0 || row.extra !== null, { path: ['units'], params: { problem: 'too-small' } }),
      ),
  ),
});

/** Staged plants go to the client who fetches them. */
export const handOver = z.strictObject({ ...entry, rows: rows(z.strictObject({ lineId: id, lotId: id, units })) });

/** What was pulled and not planted: unopened pots go back to a place (a quarantine place unless another is named); what was knocked out is lost. */
export const returnFromOrder = z.strictObject({
  ...entry,
  placeId: z._default(z.nullable(id), null),
  /** Needed where plants are lost. */
  cause: z._default(z.nullable(z.enum(LOSS_CAUSES)), null),
  rows: rows(
    z
      .strictObject({
        lineId: id,
        lotId: id,
        returnedUnits: z._default(unitsOrNone, 0),
        lostUnits: z._default(unitsOrNone, 0),
      })
      .check(
        z.refine((row) => row.returnedUnits + row.lostUnits > 0, {
          path: ['returnedUnits'],
          params: { problem: 'too-small' },
        }),
      ),
  ),
});

/** Open orders that are due within so many days, overdue ones included. */
export const listToPull = z.strictObject({ withinDays: z._default(z.int().check(z.gte(0), z.lte(366)), 14) });

/** Plants that were pulled go back to `placeId` in the same entry; without one an order with pulled plants is refused. */
export const cancelOrder = z.strictObject({
  orderId: id,
  happenedOn: calendarDate,
  placeId: z._default(z.nullable(id), null),
  note: z._default(longText, ''),
});
