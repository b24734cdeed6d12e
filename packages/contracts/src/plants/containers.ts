import { CONTAINER_KINDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, id, longText, shortText, text } from '../fields.ts';

const size = (most: number) => z.nullable(z.int().check(z.gte(1), z.lte(most)));

const measures = {
  name: shortText,
  /** Of one cell or pot. */
  volumeMl: size(1_000_000),
  depthMm: size(3000),
  /** The footprint of a whole tray or of a pot at its widest. */
  widthMm: size(5000),
  lengthMm: size(5000),
  /** Only trays have cells. */
  cells: size(2000),
  tradeClass: z.nullable(text(z.trim(), z.maxLength(20))),
  note: longText,
};

export const addContainer = z.strictObject({
  containerId: id,
  code: text(z.trim(), z.regex(/^[a-z0-9][a-z0-9-]{0,29}$/)),
  kind: z.enum(CONTAINER_KINDS),
  ...measures,
});
/** Code and kind stay: what stood in it would otherwise have stood in something else. */
export const editContainer = z.strictObject({ containerId: id, ...measures, ...asRead });
export const retireContainer = z.strictObject({ containerId: id });
export const restoreContainer = z.strictObject({ containerId: id });
export const listContainers = z.strictObject({ retired: z._default(z.boolean(), false) });
