import type { gardens } from '@rootclock/contracts';
import * as z from 'zod/mini';
import { columns, editedRow, raised } from '../../../db/editions.ts';
import { sql } from '../../../db/sql.ts';
import { found, refuse } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

type ClientInput = z.output<typeof gardens.addClient>;

export const clientFacts = z.strictObject({
  id: z.string(),
  name: z.string(),
  leadDays: z.number(),
  isBlanked: z.boolean(),
});
export type ClientFacts = z.infer<typeof clientFacts>;

/** Loads a client, or refuses; one whose data were blanked takes no changes and no new orders. */
export async function loadClient({ tx, nurseryId }: ReadContext, id: string): Promise<ClientFacts> {
  const row = await tx.row(clientFacts)`
    SELECT id::text, name, lead_days AS "leadDays", blanked_at IS NOT NULL AS "isBlanked" FROM client WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  const client = found(row, 'client', 'clientId');
  if (client.isBlanked) refuse('client-blanked', undefined, 'clientId');
  return client;
}

export async function insertClient({ tx, nurseryId }: CommandContext, client: ClientInput): Promise<void> {
  await tx.run`
    INSERT INTO client (nursery_id, id, name, email, phone, address, lead_days, note)
    VALUES (${nurseryId}::uuid, ${client.clientId}::uuid, ${client.name}, ${client.email ?? null}, ${client.phone ?? null}, ${client.address ?? null}, ${client.leadDays}, ${client.note})`;
}

export async function updateClient({ tx, nurseryId }: CommandContext, client: ClientInput): Promise<void> {
  await tx.run`
    UPDATE client SET name = ${client.name}, email = ${client.email ?? null}, phone = ${client.phone ?? null}, address = ${client.address ?? null},
                      lead_days = ${client.leadDays}, note = ${client.note}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${client.clientId}::uuid`;
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

const openLinesOfClientRow = z.strictObject({ id: z.string() });

/** The client's open lines, whose leave-by days follow the client's lead. */
export async function openLinesOfClient({ tx, nurseryId }: ReadContext, clientId: string): Promise<string[]> {
  const rows = await tx.rows(openLinesOfClientRow)`
    SELECT l.id::text FROM garden_order o JOIN order_line l ON l.nursery_id = o.nursery_id AND l.order_id = o.id
     WHERE o.nursery_id = ${nurseryId}::uuid AND o.client_id = ${clientId}::uuid AND o.state = 'open' AND l.withdrawn_on IS NULL`;
  return rows.map(({ id }) => id);
}

const openOrdersOfRow = z.strictObject({ code: z.string() });

export async function openOrdersOf({ tx, nurseryId }: ReadContext, clientId: string): Promise<string[]> {
  const rows = await tx.rows(openOrdersOfRow)`
    SELECT code FROM garden_order WHERE nursery_id = ${nurseryId}::uuid AND client_id = ${clientId}::uuid AND state = 'open' ORDER BY code`;
  return rows.map(({ code }) => code);
}

const siteOfClient = z.strictObject({ id: z.string() });

export async function sitesOf({ tx, nurseryId }: ReadContext, clientId: string): Promise<string[]> {
  const rows = await tx.rows(siteOfClient)`
    SELECT id::text FROM site WHERE nursery_id = ${nurseryId}::uuid AND client_id = ${clientId}::uuid`;
  return rows.map(({ id }) => id);
}

/** A client as its form reads it. */
export const clientEdits = editedRow<{ clientId: string }>({
  table: 'client',
  row: ({ clientId }) => sql`r.id = ${clientId}::uuid`,
  fields: columns('name', 'email', 'phone', 'address', 'leadDays', 'note'),
});
