import * as z from 'zod/mini';
import { raised } from '../../../db/editions.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

const openOrder = z.strictObject({ code: z.string() });

export async function openOrdersOf({ tx, nurseryId }: ReadContext, clientId: string): Promise<string[]> {
  const rows = await tx.rows(openOrder)`
    SELECT code FROM garden_order WHERE nursery_id = ${nurseryId}::uuid AND client_id = ${clientId}::uuid AND state = 'open' ORDER BY code`;
  return rows.map(({ code }) => code);
}

/** Takes out what tells who the client is or where they live. What was planted and promised stays under the order's code. */
export async function blankClientData(context: CommandContext, clientId: string): Promise<void> {
  const { tx, nurseryId, now } = context;
  await tx.run`
    WITH sites AS (UPDATE site SET name = '—', address = '', note = '' WHERE nursery_id = ${nurseryId}::uuid AND client_id = ${clientId}::uuid RETURNING id),
    beds AS (UPDATE bed b SET name = '—', note = '' FROM sites s WHERE b.nursery_id = ${nurseryId}::uuid AND b.site_id = s.id),
    orders AS (UPDATE garden_order SET note = '', ${raised(context)} WHERE nursery_id = ${nurseryId}::uuid AND client_id = ${clientId}::uuid)
    UPDATE client SET name = '—', email = NULL, phone = NULL, address = NULL, note = '', blanked_at = ${now}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${clientId}::uuid`;
}

const siteOfClient = z.strictObject({ id: z.string() });

export async function sitesOf({ tx, nurseryId }: ReadContext, clientId: string): Promise<string[]> {
  const rows = await tx.rows(siteOfClient)`
    SELECT id::text FROM site WHERE nursery_id = ${nurseryId}::uuid AND client_id = ${clientId}::uuid`;
  return rows.map(({ id }) => id);
}
