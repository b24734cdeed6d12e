import * as z from 'zod/mini';
import { calendarDate, id, longText, unitsOrNone } from '../fields.ts';

/** What stands of one lot at one place, told apart in spring. */
const springCount = z.strictObject({
  lotId: id,
  placeId: id,
  upUnits: unitsOrNone,
  deadUnits: unitsOrNone,
  /** On hand until the plant's last-emergence day, and asked about after it. */
  notUpUnits: unitsOrNone,
});

/** The spring count of one lot or of a whole place, in one entry. */
export const countSpring = z.strictObject({
  counts: z.array(springCount).check(
    z.minLength(1),
    z.maxLength(500),
    z.refine((counts) => new Set(counts.map(({ lotId, placeId }) => `${lotId}/${placeId}`)).size === counts.length, {
      params: { problem: 'wrong-form' },
    }),
  ),
  happenedOn: calendarDate,
  note: z._default(longText, ''),
  /** Said once more after the numbers were shown: what is more or less than stands there is booked as found or unexplained. */
  bookDifferences: z._default(z.boolean(), false),
  /** Said once more after the screen has asked whether the plant may only be dormant. */
  confirmed: z._default(z.boolean(), false),
});

/** Lots with plants that have not come up, whose last-emergence day has passed; with `waiting` also those whose day is still to come. */
export const listNotUp = z.strictObject({
  placeId: z.optional(z.nullable(id)),
  waiting: z._default(z.boolean(), false),
});

/** How fast plants of a lot are lost, and what of them lives through a winter. */
export const readLivingRates = z.strictObject({ lotId: id });

/** What stands at a place and in all that lies in it, or of one lot, to be counted in spring. */
export const readSpringSheet = z
  .strictObject({ placeId: z.optional(z.nullable(id)), lotId: z.optional(z.nullable(id)) })
  .check(
    z.refine((input) => (input.placeId == null) !== (input.lotId == null), {
      path: ['placeId'],
      params: { problem: 'required' },
    }),
  );
