import { refuse } from '../../../refusal.ts';
import { setState } from '../../orders/orders/store.ts';
import type { Undo } from '../../stock/reversal/undo.ts';
import { cancelling } from './details.ts';
import { loadOrdersOf } from './store.ts';

/**
 * Plants that come back to an order's staging need an order that is open: a finished one opens again, and so does one that was cancelled by the
 * very entry that is taken back. For any other cancelled order there is no way back.
 */
const orders: Undo = {
  kinds: ['pull', 'plant', 'return', 'sell'],
  undo: async (context, entry) => {
    const lines = entry.subjects.filter(({ kind }) => kind === 'line').map(({ id }) => id);
    // An order whose lines were all withdrawn is cancelled without naming any.
    const cancelled = cancelling.read(entry)?.orderId ?? null;
    if (lines.length === 0 && cancelled === null) return;
    for (const order of await loadOrdersOf(context, lines, cancelled)) {
      if (order.state === 'open') continue;
      if (order.state === 'cancelled' && cancelled === null)
        refuse('order-not-open', { order: order.code, state: order.state }, 'entryId');
      await setState(context, order.id, 'open');
    }
    for (const lineId of lines) context.touched.line(lineId);
    context.touched.features.add('gardens');
  },
};

export const gardensUndos: readonly Undo[] = [orders];
