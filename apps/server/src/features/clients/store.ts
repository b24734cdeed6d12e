import type { clients } from '@rootclock/contracts';
import * as z from 'zod/mini';
import { columns, editedRow } from '../../db/editions.ts';
import { sql } from '../../db/sql.ts';
import { found, refuse } from '../../refusal.ts';
import type { CommandContext, ReadContext } from '../../trpc/operation.ts';

type ClientInput = z.output<typeof clients.addClient>;

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

/** A client as its form reads it. */
export const clientEdits = editedRow<{ clientId: string }>({
  table: 'client',
  row: ({ clientId }) => sql`r.id = ${clientId}::uuid`,
  fields: columns('name', 'email', 'phone', 'address', 'leadDays', 'note'),
});

type SiteInput = Omit<z.output<typeof clients.addSite>, 'clientId'>;

type BedInput = Omit<z.output<typeof clients.addBed>, 'siteId'>;

export const siteFacts = z.strictObject({
  id: z.string(),
  clientId: z.string(),
  name: z.string(),
  region: z.nullable(z.string()),
});

export type SiteFacts = z.infer<typeof siteFacts>;

export async function loadSite({ tx, nurseryId }: ReadContext, id: string): Promise<SiteFacts> {
  const row = await tx.row(siteFacts)`
    SELECT id::text, client_id::text AS "clientId", name, region FROM site WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  return found(row, 'site', 'siteId');
}

export const bedFacts = z.strictObject({
  id: z.string(),
  siteId: z.string(),
  clientId: z.string(),
  name: z.string(),
});

export type BedFacts = z.infer<typeof bedFacts>;

/** Loads beds by id, in any order; one that is not this nursery's answers as not found. */
export async function loadBeds({ tx, nurseryId }: ReadContext, ids: readonly string[]): Promise<Map<string, BedFacts>> {
  const rows =
    ids.length === 0
      ? []
      : await tx.rows(bedFacts)`
    SELECT b.id::text, b.site_id::text AS "siteId", s.client_id::text AS "clientId", b.name FROM bed b JOIN site s ON s.nursery_id = b.nursery_id AND s.id = b.site_id
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.id = ANY (${[...ids]}::uuid[])`;
  const byId = new Map(rows.map((row) => [row.id, row]));
  for (const id of ids) found(byId.get(id), 'bed', 'bedId');
  return byId;
}

export async function insertSite(
  { tx, nurseryId }: CommandContext,
  site: SiteInput & { clientId: string },
): Promise<void> {
  await tx.run`
    INSERT INTO site (nursery_id, id, client_id, name, address, region, livestock_near, note)
    VALUES (${nurseryId}::uuid, ${site.siteId}::uuid, ${site.clientId}::uuid, ${site.name}, ${site.address}, ${site.region ?? null}, ${site.livestockNear}, ${site.note})`;
}

export async function updateSite({ tx, nurseryId }: CommandContext, site: SiteInput): Promise<void> {
  await tx.run`
    UPDATE site SET name = ${site.name}, address = ${site.address}, region = ${site.region ?? null}, livestock_near = ${site.livestockNear}, note = ${site.note}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${site.siteId}::uuid`;
}

export async function insertBed({ tx, nurseryId }: CommandContext, bed: BedInput & { siteId: string }): Promise<void> {
  await tx.run`
    INSERT INTO bed (nursery_id, id, site_id, name, area_cm2, sun, moisture, note)
    VALUES (${nurseryId}::uuid, ${bed.bedId}::uuid, ${bed.siteId}::uuid, ${bed.name}, ${bed.areaCm2}, ${bed.sun}, ${bed.moisture}, ${bed.note})`;
}

export async function updateBed({ tx, nurseryId }: CommandContext, bed: BedInput): Promise<void> {
  await tx.run`
    UPDATE bed SET name = ${bed.name}, area_cm2 = ${bed.areaCm2}, sun = ${bed.sun}, moisture = ${bed.moisture}, note = ${bed.note}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${bed.bedId}::uuid`;
}

export const siteEdits = editedRow<{ siteId: string }>({
  table: 'site',
  row: ({ siteId }) => sql`r.id = ${siteId}::uuid`,
  fields: columns('name', 'address', 'region', 'livestockNear', 'note'),
});

export const bedEdits = editedRow<{ bedId: string }>({
  table: 'bed',
  row: ({ bedId }) => sql`r.id = ${bedId}::uuid`,
  fields: columns('name', 'areaCm2', 'sun', 'moisture', 'note'),
});

/** Takes out what tells who a client is or where they live. */
export async function blankClientData({ tx, nurseryId, now }: CommandContext, clientId: string): Promise<void> {
  await tx.run`
    WITH sites AS (
      UPDATE site SET name = '—', address = '', note = ''
       WHERE nursery_id = ${nurseryId}::uuid AND client_id = ${clientId}::uuid RETURNING id),
    beds AS (
      UPDATE bed b SET name = '—', note = '' FROM sites s WHERE b.nursery_id = ${nurseryId}::uuid AND b.site_id = s.id)
    UPDATE client SET name = '—', email = NULL, phone = NULL, address = NULL, note = '', blanked_at = ${now}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${clientId}::uuid`;
}

const siteOfClient = z.strictObject({ id: z.string() });

export async function sitesOf({ tx, nurseryId }: ReadContext, clientId: string): Promise<string[]> {
  const rows = await tx.rows(siteOfClient)`
    SELECT id::text FROM site WHERE nursery_id = ${nurseryId}::uuid AND client_id = ${clientId}::uuid`;
  return rows.map(({ id }) => id);
}
