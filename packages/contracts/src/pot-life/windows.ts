import * as z from 'zod/mini';
import { asRead, id, longText, monthDay, text } from '../fields.ts';

const days = {
  /** A window that closes on an earlier day of the year than it opens runs over the year's end. */
  opensMd: monthDay,
  closesMd: monthDay,
  /** Only for plants in containers of at most so many millilitres. */
  maxContainerMl: z.nullable(z.int().check(z.gte(1), z.lte(1_000_000))),
  /** Only for sites of this region. */
  region: z.nullable(text(z.trim(), z.minLength(1), z.maxLength(20))),
  note: z._default(longText, ''),
};

export const addWindow = z.strictObject({ windowId: id, ...days });
export const editWindow = z.strictObject({ windowId: id, ...days, ...asRead });
export const retireWindow = z.strictObject({ windowId: id });
export const listWindows = z.strictObject({});
/** The day of the year by which what may not stand through winter must be out. */
export const setFreezeDay = z.strictObject({ freezeMd: monthDay, ...asRead });
