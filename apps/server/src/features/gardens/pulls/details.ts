// What entries on an order keep so that they can be taken back, each purpose with its schema.
import * as z from 'zod/mini';
import { purposeOf } from '../../stock/ledger/purpose.ts';

/** An order that was cancelled; plants that were pulled for it went back. */
export const cancelling = purposeOf(
  ['return'],
  'cancelling',
  z.object({ orderId: z.string(), cancels: z.literal(true) }),
);

/** Plants of an order that were pulled, planted, handed over or brought back. */
export const handling = purposeOf(['pull', 'plant', 'sell', 'return'], 'handling', z.object({ orderId: z.string() }));
