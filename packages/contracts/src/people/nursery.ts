import * as z from 'zod/mini';
import { asRead, calendarDate, shortText, text } from '../fields.ts';

export const UNIT_SYSTEMS = ['metric', 'us'] as const;

export const editNursery = z.strictObject({
  ...asRead,
  name: shortText,
  /** A time zone of the IANA list: days begin and end by it. */
  zone: text(z.trim(), z.minLength(1), z.maxLength(64)),
  region: z.nullable(text(z.trim(), z.minLength(1), z.maxLength(20))),
  units: z.enum(UNIT_SYSTEMS),
  /** Days before a plant-by day from which notice is given. */
  noticeDays: z.int().check(z.gte(1), z.lte(365)),
  /** What must be out by this day and that nobody takes counts as declining. */
  seasonEndOn: calendarDate,
});
