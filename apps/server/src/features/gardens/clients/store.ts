import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';

const openOrder = z.strictObject({ code: z.string() });

export async function openOrdersOf({ tx, nurseryId }: ReadContext, clientId: string): Promise<string[]> {
  const rows = await tx.rows(openOrder)`
    SELECT code FROM order_named WHERE nursery_id = ${nurseryId}::uuid AND client_id = ${clientId}::uuid AND state = 'open' ORDER BY code`;
  return rows.map(({ code }) => code);
}
