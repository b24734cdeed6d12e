/** What persons change of an order's lines and of what is tied to them, tried before it is kept. */
import * as z from 'zod/mini';
import { id, optionalText, units } from '../fields.ts';
import { alternatives } from '../orders/alternatives.ts';

const conditions = {
  units,
  seedZone: optionalText,
  wildType: z._default(z.boolean(), false),
  untreated: z._default(z.boolean(), false),
  alternatives,
};
const reservation = { lineId: id, supplyId: id };

/** A line asks for another number, with other conditions or other stand-ins. With `keepRank` it keeps its turn whoever becomes shorter. */
const editLine = z.strictObject({
  kind: z.literal('edit-line'),
  lineId: id,
  ...conditions,
  keepRank: z._default(z.boolean(), false),
});
/** A line is withdrawn, and what was only promised to it becomes free. */
const withdrawLine = z.strictObject({ kind: z.literal('withdraw-line'), lineId: id });
/** An order asks for one thing more, behind all others, under the id that the line would get. */
const addLine = z.strictObject({
  kind: z.literal('add-line'),
  orderId: id,
  lineId: id,
  plantId: id,
  containerId: id,
  ...conditions,
});
/** So many units of one lot or batch are tied to a line. */
const pin = z.strictObject({ kind: z.literal('pin'), ...reservation, units });
/** What is tied floats again. */
const unpin = z.strictObject({ kind: z.literal('unpin'), ...reservation });
/** What is reserved of a lot or batch is given up by hand, and the line takes nothing of it any more. */
const release = z.strictObject({ kind: z.literal('release'), ...reservation });
/** An order takes nothing but natives any more, or other plants again. */
const nativesOnly = z.strictObject({
  kind: z.literal('natives-only'),
  orderId: id,
  nativesOnly: z._default(z.boolean(), true),
});

export const orderEdits = [editLine, withdrawLine, addLine, pin, unpin, release, nativesOnly] as const;
