import { found } from '../../../../refusal.ts';
import type { ReadContext } from '../../../../trpc/operation.ts';

/** What a calendar is written under: the nursery's name, and its version, which grows with every entry. */
export async function readNurseryState({ tx, nurseryId }: ReadContext): Promise<{ name: string; version: number }> {
  const [row] = await tx.$queryRaw<
    { name: string; version: number }[]
  >`SELECT name, version::int FROM nursery WHERE id = ${nurseryId}::uuid`;
  return found(row, 'nursery');
}
