import type { Undo } from '../../../stock/reversal/undo.ts';
import { settleBatch } from './settle.ts';

/** Counts, clocks, stages, forecast and closing follow from the entries that stand, so taking one back only has to reckon them anew. */
export const batchUndo: Undo = {
  kinds: ['start', 'convert', 'count', 'pot', 'lose', 'move', 'observe', 'close'],
  undo: async (context, entry) => {
    for (const { kind, id } of entry.subjects) if (kind === 'batch') await settleBatch(context, id);
  },
};
