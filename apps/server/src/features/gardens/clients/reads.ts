import { clients, gardens, type Page } from '@rootclock/contracts';
import { BED_MOISTURE, BED_SUN, EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { containing } from '../../../db/like.ts';
import { sql, type Sql } from '../../../db/sql.ts';
import { found } from '../../../refusal.ts';
import { query, type ReadContext } from '../../../trpc/operation.ts';
import { orderConditions, readAllOrderRows } from '../../promises/orders/reads.ts';

const listedClient = z.strictObject({
  row: z.strictObject({
    id: z.string(),
    edition: z.number(),
    name: z.string(),
    email: z.nullable(z.string()),
    phone: z.nullable(z.string()),
    address: z.nullable(z.string()),
    leadDays: z.number(),
    note: z.string(),
    isBlanked: z.boolean(),
    sites: z.number(),
    onlySiteId: z.nullable(z.string()),
    openOrders: z.number(),
    nextDueOn: z.nullable(z.string()),
  }),
  total: z.number(),
});

async function readClients(
  { tx, nurseryId }: ReadContext,
  where: Sql,
  page: number,
  perPage: number,
): Promise<{ rows: clients.ClientRow[]; total: number }> {
  const rows = await tx.rows(listedClient)`
    SELECT count(*) OVER ()::int AS total,
           jsonb_build_object('id', k.id, 'edition', k.edition, 'name', k.name, 'email', k.email, 'phone', k.phone, 'address', k.address, 'leadDays', k.lead_days, 'note', k.note, 'isBlanked', k.blanked_at IS NOT NULL,
             'sites', (SELECT count(*) FROM site_named s WHERE s.nursery_id = k.nursery_id AND s.client_id = k.id),
             'onlySiteId', (SELECT min(s.id::text) FROM site_named s WHERE s.nursery_id = k.nursery_id AND s.client_id = k.id HAVING count(*) = 1),
             'openOrders', (SELECT count(*) FROM order_named o WHERE o.nursery_id = k.nursery_id AND o.client_id = k.id AND o.state = 'open'),
             'nextDueOn', (SELECT min(o.due_on) FROM order_named o WHERE o.nursery_id = k.nursery_id AND o.client_id = k.id AND o.state = 'open')) AS row
      FROM client_told k WHERE k.nursery_id = ${nurseryId}::uuid AND ${where}
     ORDER BY lower(k.name), k.id LIMIT ${perPage} OFFSET ${(page - 1) * perPage}`;
  return { rows: rows.map(({ row }) => row), total: rows[0]?.total ?? 0 };
}

/** Clients by name; those whose data were blanked are found only through their orders. */
export const listClients = query({
  name: 'listClients',
  input: gardens.listClients,
  roles: EVERYONE,
  read: async (context, { search, page, perPage }): Promise<Page<clients.ClientRow>> => {
    const text = search.trim();
    const named =
      text === ''
        ? sql`true`
        : sql`(k.name ILIKE ${containing(text)} OR k.email ILIKE ${containing(text)} OR k.phone ILIKE ${containing(text)})`;
    return {
      ...(await readClients(context, sql`k.blanked_at IS NULL AND ${named}`, page, perPage)),
      page,
      perPage,
    };
  },
});

export const readClient = query({
  name: 'readClient',
  input: gardens.readClient,
  roles: EVERYONE,
  read: async (context, { clientId }): Promise<gardens.ClientPage> => {
    const { rows } = await readClients(context, sql`k.id = ${clientId}::uuid`, 1, 1);
    const client = found(rows[0], 'client', 'clientId');
    return {
      ...client,
      siteRows: await readSites(context, sql`s.client_id = ${clientId}::uuid`),
      orders: await readAllOrderRows(context, orderConditions(context, { clientId })),
    };
  },
});

const listedSite = z.strictObject({
  row: z.strictObject({
    id: z.string(),
    edition: z.number(),
    clientId: z.string(),
    clientName: z.string(),
    name: z.string(),
    address: z.string(),
    region: z.nullable(z.string()),
    livestockNear: z.boolean(),
    note: z.string(),
    beds: z.array(
      z.strictObject({
        id: z.string(),
        edition: z.number(),
        siteId: z.string(),
        name: z.string(),
        areaCm2: z.nullable(z.number()),
        sun: z.nullable(z.enum(BED_SUN)),
        moisture: z.nullable(z.enum(BED_MOISTURE)),
        note: z.string(),
        plantedUnits: z.number(),
      }),
    ),
  }),
});

/** Sites `s` with their beds and how many plants were put into each. */
export async function readSites({ tx, nurseryId }: ReadContext, where: Sql): Promise<clients.SiteRow[]> {
  const rows = await tx.rows(listedSite)`
    SELECT jsonb_build_object('id', s.id, 'edition', s.edition, 'clientId', s.client_id, 'clientName', k.name, 'name', s.name, 'address', s.address, 'region', s.region, 'livestockNear', s.livestock_near, 'note', s.note,
             'beds', coalesce((SELECT jsonb_agg(jsonb_build_object('id', b.id, 'edition', b.edition, 'siteId', b.site_id, 'name', b.name, 'areaCm2', b.area_cm2, 'sun', b.sun, 'moisture', b.moisture, 'note', b.note,
                                        'plantedUnits', (SELECT coalesce(sum(g.delivered_units), 0) FROM line_asked l JOIN line_progress g ON g.nursery_id = l.nursery_id AND g.line_id = l.id
                                                          WHERE l.nursery_id = b.nursery_id AND l.bed_id = b.id)) ORDER BY b.name)
                                 FROM bed_told b WHERE b.nursery_id = s.nursery_id AND b.site_id = s.id), '[]')) AS row
      FROM site_told s JOIN client_named k ON k.nursery_id = s.nursery_id AND k.id = s.client_id
     WHERE s.nursery_id = ${nurseryId}::uuid AND ${where} ORDER BY lower(s.name), s.id`;
  return rows.map(({ row }) => row);
}

const plantedRow = z.strictObject({
  bedId: z.nullable(z.string()),
  bedName: z.nullable(z.string()),
  orderId: z.string(),
  orderCode: z.string(),
  lineId: z.string(),
  lotId: z.string(),
  lotCode: z.string(),
  plantId: z.string(),
  scientificName: z.string(),
  containerCode: z.string(),
  units: z.number(),
  lastPlantedOn: z.string(),
});

/** What was planted at a site, lot by lot, less what was reversed. */
async function readPlanted({ tx, nurseryId }: ReadContext, siteId: string): Promise<gardens.PlantedRow[]> {
  return tx.rows(plantedRow)`
    SELECT b.id::text AS "bedId", b.name AS "bedName", o.id::text AS "orderId", o.code AS "orderCode", l.id::text AS "lineId", t.id::text AS "lotId", t.code AS "lotCode",
           p.id::text AS "plantId", p.scientific_name AS "scientificName", c.code AS "containerCode", sum(f.units)::int AS units, max(f.happened_on)::text AS "lastPlantedOn"
      FROM order_named o
      JOIN line_asked l ON l.nursery_id = o.nursery_id AND l.order_id = o.id
      JOIN account_told a ON a.nursery_id = l.nursery_id AND a.line_id = l.id
      CROSS JOIN LATERAL (
        SELECT m.from_units AS units, e.happened_on FROM movement_told m JOIN entry_told e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id
         WHERE m.nursery_id = a.nursery_id AND m.from_account_id = a.id AND m.to_account_id = account_key('outside', 'outside', 'planted')
           AND NOT EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)) f
      JOIN lot_named t ON t.nursery_id = a.nursery_id AND t.id = a.lot_id
      JOIN plant_named p ON p.nursery_id = t.nursery_id AND p.id = t.plant_id
      JOIN container_named c ON c.nursery_id = t.nursery_id AND c.id = t.container_id
      LEFT JOIN bed_told b ON b.nursery_id = l.nursery_id AND b.id = l.bed_id
     WHERE o.nursery_id = ${nurseryId}::uuid AND o.site_id = ${siteId}::uuid
     GROUP BY b.id, b.name, o.id, o.code, l.id, t.id, t.code, p.id, p.scientific_name, c.code
     ORDER BY b.name NULLS LAST, p.scientific_name, t.code`;
}

export const readSite = query({
  name: 'readSite',
  input: gardens.readSite,
  roles: EVERYONE,
  read: async (context, { siteId }): Promise<gardens.SitePage> => {
    const site = found((await readSites(context, sql`s.id = ${siteId}::uuid`))[0], 'site', 'siteId');
    return {
      ...site,
      orders: await readAllOrderRows(context, orderConditions(context, { siteId })),
      planted: await readPlanted(context, siteId),
    };
  },
});
