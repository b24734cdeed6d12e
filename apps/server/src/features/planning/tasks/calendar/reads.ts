import * as z from 'zod/mini';
import { found } from '../../../../refusal.ts';
import type { ReadContext } from '../../../../trpc/operation.ts';

const nurseryState = z.strictObject({ name: z.string(), version: z.number() });

/** What a calendar is written under: the nursery's name, and its version, which grows with every entry. */
export async function readNurseryState({ tx, nurseryId }: ReadContext): Promise<{ name: string; version: number }> {
  const row = await tx.row(nurseryState)`SELECT name, version::int FROM nursery_settings WHERE id = ${nurseryId}::uuid`;
  return found(row, 'nursery');
}
