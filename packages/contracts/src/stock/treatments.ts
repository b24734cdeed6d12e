import * as z from 'zod/mini';
import { id, instant, longText, optionalText, shortText, text } from '../fields.ts';

const treatment = {
  product: shortText,
  registrationNo: optionalText,
  rate: optionalText,
  /** Who applied it, with the licence where one is needed. */
  applicator: shortText,
  target: z._default(text(z.trim(), z.maxLength(120)), ''),
  treatedAt: instant,
  /** From when people may enter again: so many hours after the treatment as the label says. */
  reentryHours: z.optional(z.nullable(z.number().check(z.gte(0.01), z.lte(24 * 60)))),
  /** The same as an instant, for whoever counts it out. */
  reentryAt: z.optional(z.nullable(instant)),
  note: z._default(longText, ''),
};
interface Reentry {
  treatedAt: string;
  reentryHours?: number | null | undefined;
  reentryAt?: string | null | undefined;
}
const oneReentry = <Input extends Reentry>() =>
  z.refine<Input>(
    ({ treatedAt, reentryHours, reentryAt }) =>
      !reentryAt || ((reentryHours ?? null) === null && new Date(reentryAt) > new Date(treatedAt)),
    { path: ['reentryAt'], params: { problem: 'wrong-form' } },
  );

/** What was applied to some lots. It closes the places they stand at until the re-entry time. */
export const treatLots = z
  .strictObject({ lotIds: z.array(id).check(z.minLength(1), z.maxLength(500)), ...treatment })
  .check(oneReentry());
/** What was applied to all that stands at a place and at the places within it. */
export const treatPlace = z.strictObject({ placeId: id, ...treatment }).check(oneReentry());
