import * as z from 'zod/mini';
import { calendarDate, id, page, text, units } from '../fields.ts';
import { acceptedShortages } from './shortages.ts';

const reservation = { lineId: id, supplyId: id };

/**
 * Ties so many units of one lot or batch to a line until they are unpinned or pulled; floating units of the line make room for them.
 * Where that leaves other lines shorter it is refused with their names, and sent again with `acceptedShortages`.
 */
export const pinReservation = z.strictObject({ ...reservation, units, acceptedShortages });
/** Lets the reservation float again; the plants stay promised as long as nothing serves better. */
export const unpinReservation = z.strictObject(reservation);
/** Gives the units up; the line is filled again from whatever else serves it, and from this lot or batch only once it is pinned to it again. */
export const releaseReservation = z.strictObject(reservation);

/** What could serve a line, or a new line of an item on a day, the supply that must leave its pot first going first. */
export const offersForLine = z.strictObject({ lineId: id });
export const offersForItem = z.strictObject({
  plantId: id,
  containerId: id,
  on: calendarDate,
  siteId: z._default(z.nullable(id), null),
  clientId: z._default(z.nullable(id), null),
  seedZone: z._default(z.nullable(text(z.maxLength(120))), null),
  wildType: z._default(z.boolean(), false),
  untreated: z._default(z.boolean(), false),
  nativesOnly: z._default(z.boolean(), false),
});
export const offersFor = z.union([offersForLine, offersForItem]);

/** Where a lot or batch could go: the open lines that accept it. */
export const demandFor = z.strictObject({ supplyId: id });

export const listShort = z.strictObject({ ...page });
