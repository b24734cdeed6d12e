import { bookableGrams } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import { loadSource } from '../store.ts';
import { requireSeed } from './require-seed.ts';
import { insertSeedMovements } from './store.ts';

export interface SeedUse {
  sourceId: string;
  grams: number;
  happenedOn: string;
  /** The batch it goes into and the entry that says so; both must be written already. */
  batchId: string;
  entryId: string;
}

/** Takes seed out of a source's store for a batch. Taking the entry back brings the seed back. `field` is where errors are shown. */
export async function useSeed(
  context: CommandContext,
  { sourceId, grams, happenedOn, batchId, entryId }: SeedUse,
  field = 'seedGrams',
): Promise<void> {
  const source = await loadSource(context, sourceId);
  if (source.retired) refuse('source-retired', { source: source.code }, 'sourceId');
  const wanted = bookableGrams(grams);
  await requireSeed(context, [{ source, grams: wanted, field }]);
  await insertSeedMovements(context, [{ sourceId, kind: 'sown', grams: -wanted, happenedOn, batchId, entryId }]);
}
