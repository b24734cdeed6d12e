import type { gardens } from '@rootclock/contracts';
import * as z from 'zod/mini';
import { columns, editedRow } from '../../../db/editions.ts';
import { sql } from '../../../db/sql.ts';
import { found } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

type SiteInput = Omit<z.output<typeof gardens.addSite>, 'clientId'>;
type BedInput = Omit<z.output<typeof gardens.addBed>, 'siteId'>;

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

const openLinesOfSiteRow = z.strictObject({ id: z.string() });

/** Open lines of a site, whose leave-by days follow its region's planting windows. */
export async function openLinesOfSite({ tx, nurseryId }: ReadContext, siteId: string): Promise<string[]> {
  const rows = await tx.rows(openLinesOfSiteRow)`
    SELECT l.id::text FROM garden_order o JOIN order_line l ON l.nursery_id = o.nursery_id AND l.order_id = o.id
     WHERE o.nursery_id = ${nurseryId}::uuid AND o.site_id = ${siteId}::uuid AND o.state = 'open' AND l.withdrawn_on IS NULL`;
  return rows.map(({ id }) => id);
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
