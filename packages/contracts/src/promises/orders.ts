import { ORDER_KINDS, ORDER_STATES } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, calendarDate, id, page, text, units } from '../fields.ts';
import { conditions } from '../orders/orders.ts';
import { acceptedShortages } from './shortages.ts';

/** The owner keeps the line's rank although others, who are named in the refusal, become shorter. */
const keepRank = z._default(z.boolean(), false);

export const editLine = z.strictObject({ lineId: id, units, ...conditions, acceptedShortages, keepRank, ...asRead });

export const changeDay = z.strictObject({ orderId: id, dueOn: calendarDate, acceptedShortages, keepRank, ...asRead });

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
