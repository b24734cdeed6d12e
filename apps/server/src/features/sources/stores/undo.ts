import type { CommandContext } from '../../../trpc/operation.ts';
import { insertSeedMovements, loadUsesOfEntry } from './store.ts';

/**
 * Seed that an entry used goes back into its store when the entry is taken back. Sources come before stock, whose shape this fits without
 * naming it; an entry is taken back only once, and so is its seed.
 */
export const seedUndo = {
  kinds: 'every' as const,
  undo: async (context: CommandContext, entry: { id: string }): Promise<void> => {
    const uses = await loadUsesOfEntry(context, entry.id);
    await insertSeedMovements(
      context,
      uses.map(({ id, sourceId, grams }) => ({
        sourceId,
        kind: 'taken-back',
        grams: -grams,
        happenedOn: context.today,
        reversesId: id,
      })),
    );
  },
};
