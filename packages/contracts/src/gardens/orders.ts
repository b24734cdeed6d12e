import { ORDER_KINDS, ORDER_STATES } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, calendarDate, id, longText, optionalText, page, text, units } from '../fields.ts';
import { alternatives } from '../promises/alternatives.ts';
import { acceptedShortages } from '../promises/shortages.ts';

/** What a line asks of each lot that is to serve it. */
const conditions = {
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

/** The owner keeps the line's rank although others, who are named in the refusal, become shorter. */
const keepRank = z._default(z.boolean(), false);

export const editLine = z.strictObject({ lineId: id, units, ...conditions, acceptedShortages, keepRank, ...asRead });
export const withdrawLine = z.strictObject({ lineId: id });
export const changeDay = z.strictObject({ orderId: id, dueOn: calendarDate, acceptedShortages, keepRank, ...asRead });
export const finishOrder = z.strictObject({ orderId: id });
/** Plants that were pulled go back to `placeId` in the same entry; without one an order with pulled plants is refused. */
export const cancelOrder = z.strictObject({
  orderId: id,
  happenedOn: calendarDate,
  placeId: z._default(z.nullable(id), null),
  note: z._default(longText, ''),
});

export const ORDER_SORTS = ['due', 'client', 'code', 'short'] as const;
export const listOrders = z.strictObject({
  search: z._default(text(z.maxLength(120)), ''),
  state: z._default(z.nullable(z.enum(ORDER_STATES)), 'open'),
  kind: z._default(z.nullable(z.enum(ORDER_KINDS)), null),
  clientId: z._default(z.nullable(id), null),
  dueFrom: z._default(z.nullable(calendarDate), null),
  dueTo: z._default(z.nullable(calendarDate), null),
  shortOnly: z._default(z.boolean(), false),
  sort: z._default(z.enum(ORDER_SORTS), 'due'),
  descending: z._default(z.boolean(), false),
  ...page,
});
export const readOrder = z.strictObject({ orderId: id });
