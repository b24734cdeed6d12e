import { LOSS_CAUSES } from '@rootclock/domain';
import * as z from 'zod/mini';
import { calendarDate, id, longText, units } from '../fields.ts';

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

/**
 * Plants put into the ground. What was pulled is taken first; `extra` says where units come from that were never pulled: from the lot
 * at a place, or found (they stood there though the books did not know them).
 */
const plantedRow = z.strictObject({
  lineId: id,
  lotId: id,
  units,
  extra: z._default(z.nullable(z.discriminatedUnion('from', [z.strictObject({ from: z.literal('place'), placeId: id, units }), z.strictObject({ from: z.literal('found'), units })])), null),
});
export const plantOrder = z.strictObject({ ...entry, rows: rows(plantedRow), confirmed: z._default(z.boolean(), false) });

/** Staged plants go to the client who fetches them. */
export const handOver = z.strictObject({ ...entry, rows: rows(z.strictObject({ lineId: id, lotId: id, units })) });

/** What was pulled and not planted: unopened pots go back to a place (a quarantine place unless another is named); what was knocked out is lost. */
export const returnFromOrder = z.strictObject({
  ...entry,
  placeId: z._default(z.nullable(id), null),
  rows: rows(z.strictObject({
    lineId: id,
    lotId: id,
    returnedUnits: z._default(z.int().check(z.gte(0), z.lte(10_000_000)), 0),
    lostUnits: z._default(z.int().check(z.gte(0), z.lte(10_000_000)), 0),
    cause: z._default(z.nullable(z.enum(LOSS_CAUSES)), null),
  })),
});

/** Open orders that are due within so many days, overdue ones included. */
export const listToPull = z.strictObject({ withinDays: z._default(z.int().check(z.gte(0), z.lte(366)), 14) });
