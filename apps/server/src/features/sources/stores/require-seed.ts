import { refuse } from '../../../refusal.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import { loadSeedStores } from './store.ts';

export interface SeedWanted {
  source: { id: string; code: string };
  grams: number;
  /** Where the error is shown. */
  field: string;
}

/** Refuses to take more than a store holds, with both numbers. The nursery's lock keeps them true until the command ends. */
export async function requireSeed(context: CommandContext, wanted: readonly SeedWanted[]): Promise<void> {
  const stores = await loadSeedStores(context, wanted.map(({ source }) => source.id));
  for (const { source, grams, field } of wanted) {
    const left = stores.get(source.id)?.grams ?? 0;
    if (left === 0) refuse('no-seed-stored', { source: source.code }, field);
    if (grams > left) refuse('more-seed-than-stored', { source: source.code, wanted: grams, left }, field);
  }
}
