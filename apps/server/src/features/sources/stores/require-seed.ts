import { SEED_KINDS, type SourceKind } from '@rootclock/domain';
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
  const stores = await loadSeedStores(
    context,
    wanted.map(({ source }) => source.id),
  );
  for (const { source, grams, field } of wanted) {
    const left = stores.get(source.id)?.grams ?? 0;
    if (left === 0) refuse('no-seed-stored', { source: source.code }, field);
    if (grams > left) refuse('more-seed-than-stored', { source: source.code, wanted: grams, left }, field);
  }
}

/** Refuses a source of cuttings, divisions or plants, of which nothing is weighed. */
export function requireSeedKind({ code, kind }: { code: string; kind: SourceKind }, field = 'sourceId'): void {
  if (!SEED_KINDS.includes(kind)) refuse('source-holds-no-seed', { source: code, kind }, field);
}

/** A source that becomes one without seed must have none left, else its grams would lie where no screen shows them. */
export async function requireNoSeedUnless(
  context: CommandContext,
  source: { id: string; code: string },
  kind: SourceKind,
): Promise<void> {
  if (SEED_KINDS.includes(kind)) return;
  const left = (await loadSeedStores(context, [source.id])).get(source.id)?.grams ?? 0;
  if (left > 0) refuse('source-has-seed', { source: source.code, left }, 'kind');
}
