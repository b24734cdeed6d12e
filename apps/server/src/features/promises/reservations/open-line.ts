import { refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { type LineState, loadLineState } from './store.ts';

/** A line that can still be promised something. */
export async function requireOpenLine(context: ReadContext, lineId: string): Promise<LineState> {
  const line = await loadLineState(context, lineId);
  if (line.orderState !== 'open') refuse('order-not-open', { order: line.orderCode, state: line.orderState }, 'lineId');
  if (line.withdrawn) refuse('line-withdrawn', { plant: line.scientificName }, 'lineId');
  return line;
}
