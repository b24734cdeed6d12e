import { ENTRY_KINDS, type EntryKind } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { CommandContext } from '../../../trpc/operation.ts';

/** An entry that is being taken back. Its movements are mirrored already when its undos run. */
export const reversedEntry = z.strictObject({
  id: z.string(),
  kind: z.enum(ENTRY_KINDS),
  happenedOn: z.string(),
  version: z.number(),
  cause: z.nullable(z.string()),
  details: z.record(z.string(), z.unknown()),
  personId: z.nullable(z.string()),
  /** Whom it moved or was about. */
  subjects: z.array(z.strictObject({ kind: z.enum(['lot', 'batch', 'place', 'source', 'line']), id: z.string() })),
});
export type ReversedEntry = z.infer<typeof reversedEntry>;

/**
 * Takes back what hangs on an entry beside its movements: columns it set, rows it opened. Stock may not import the features above it, so
 * each feature writes its own and all are handed to `reverseEntry` in features/undo.ts. An undo may refuse, and then nothing is reversed.
 */
export interface Undo {
  /** 'every' for what any entry may have done besides; it does not by itself make a kind reversible. */
  kinds: readonly EntryKind[] | 'every';
  undo(context: CommandContext, entry: ReversedEntry): Promise<void>;
}

/**
 * What these kinds do is wholly in their movements, lots and holds. Every other kind has effects beside them and can be taken back only
 * where a feature has said how.
 */
export const MOVEMENTS_ONLY: readonly EntryKind[] = [
  'opening',
  'receive',
  'pot',
  'pot-up',
  'convert',
  'split',
  'merge',
  'move',
  'lose',
  'hold',
  'sell',
  'give',
];
