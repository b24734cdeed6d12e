import * as z from 'zod/mini';
import type { CommandContext } from '../../trpc/operation.ts';

const lastNumber = z.strictObject({ last: z.number() });

/** The next code for people of a plant and year, `ASTU-26-014`; one number serves sources, batches and lots, so a code names one thing. */
export async function nextCodes(
  { tx, nurseryId }: CommandContext,
  plantCode: string,
  year: number,
  howMany: number,
): Promise<string[]> {
  const prefix = `${plantCode}-${String(year % 100).padStart(2, '0')}`;
  const row = await tx.row(lastNumber)`
    INSERT INTO code_counter (nursery_id, prefix, last) VALUES (${nurseryId}::uuid, ${prefix}, ${howMany})
    ON CONFLICT (nursery_id, prefix) DO UPDATE SET last = code_counter.last + ${howMany} RETURNING last`;
  const last = row?.last ?? howMany;
  return Array.from({ length: howMany }, (_, i) => `${prefix}-${String(last - howMany + 1 + i).padStart(3, '0')}`);
}
