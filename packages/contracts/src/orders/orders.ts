import { ORDER_KINDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, calendarDate, id, longText, optionalText, units } from '../fields.ts';
import { alternatives } from './alternatives.ts';

/** What a line asks of each lot that is to serve it. */
export const conditions = {
  bedId: z._default(z.nullable(id), null),
  seedZone: optionalText,
  wildType: z._default(z.boolean(), false),
  untreated: z._default(z.boolean(), false),
  alternatives,
};

const line = { lineId: id, plantId: id, containerId: id, units, ...conditions };

/** A line of a new order may be a component of so many kits; it then asks for as much as these take. */
const kit = z._default(z.nullable(z.strictObject({ kitId: id, units })), null);

export const orderLine = z.strictObject({ ...line, kit });

/** An order with more would be longer than what the server takes in at once. */
const MOST_ALTERNATIVES = 1000;

const namesFew = z.refine<{ alternatives: unknown[] }[]>(
  (lines) => lines.reduce((sum, { alternatives: named }) => sum + named.length, 0) <= MOST_ALTERNATIVES,
  { params: { problem: 'too-many-alternatives', most: MOST_ALTERNATIVES } },
);

export const addOrder = z.strictObject({
  orderId: id,
  clientId: id,
  /** Needed for an installation. */
  siteId: z._default(z.nullable(id), null),
  kind: z.enum(ORDER_KINDS),
  dueOn: calendarDate,
  /** Takes nothing but what is native to the region of the site, which must then have one. */
  nativesOnly: z._default(z.boolean(), false),
  note: z._default(longText, ''),
  lines: z._default(z.array(orderLine).check(z.maxLength(200), namesFew), []),
});

/** Left out, whether it takes only natives stays as it was. Lines that break it are then marked and get no such plants. */
export const editOrder = z.strictObject({
  orderId: id,
  note: z._default(longText, ''),
  nativesOnly: z.optional(z.boolean()),
  ...asRead,
});

export const addLine = z.strictObject({ orderId: id, ...line });

export const withdrawLine = z.strictObject({ lineId: id });

export const finishOrder = z.strictObject({ orderId: id });
