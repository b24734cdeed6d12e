import { gardensUndos } from './gardens/pulls/undo.ts';
import { batchUndo } from './propagation/batches/history/undo.ts';
import { seedUndo } from './sources/stores/undo.ts';
import { stockUndos } from './stock/reversal/stock-undo.ts';
import type { Undo } from './stock/reversal/undo.ts';

/** All that taking an entry back undoes beside its movements; every feature whose entries set something adds its own here. */
export const undos: readonly Undo[] = [...stockUndos, seedUndo, batchUndo, ...gardensUndos];
