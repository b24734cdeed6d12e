import { PLACE_KINDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, id, instant, monthDay, shortText, text } from '../fields.ts';

/** A day of every year on which something is due there, such as 11-15. */
const dueMd = z._default(z.nullable(monthDay), null);

const place = {
  /** What is written on the place itself, such as B3. */
  code: text(z.trim(), z.minLength(1), z.maxLength(30)),
  /** Empty becomes the code. */
  name: z._default(text(z.trim(), z.maxLength(120)), ''),
  kind: z.enum(PLACE_KINDS),
  parentId: z._default(z.nullable(id), null),
  winterCover: z._default(z.boolean(), false),
  /** Square metres plants can stand on; the database keeps hundredths. */
  benchAreaM2: z._default(z.nullable(z.number().check(z.gte(0.01), z.lte(999_999))), null),
  coverMd: dueMd,
  baitMd: dueMd,
  uncoverMd: dueMd,
};

export const addPlace = z.strictObject({ placeId: id, ...place });
export const editPlace = z.strictObject({ placeId: id, ...place, ...asRead });
export const retirePlace = z.strictObject({ placeId: id });
export const restorePlace = z.strictObject({ placeId: id });

/** Nobody goes in, and nothing goes in or out, until then. */
export const closePlace = z.strictObject({ placeId: id, untilAt: instant, reason: shortText });
export const openPlace = z.strictObject({ placeId: id, reason: shortText, ...asRead });

export const listPlaces = z.strictObject({ retired: z._default(z.boolean(), false) });
export const readPlace = z.strictObject({ placeId: id });
