import { gardens, type Page } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { containing } from '../../../db/like.ts';
import { sql, type Sql } from '../../../db/sql.ts';
import { found } from '../../../refusal.ts';
import { query, type ReadContext } from '../../../trpc/operation.ts';
import { orderConditions, readAllOrderRows } from '../orders/reads.ts';
import { readSites } from '../sites/reads.ts';

const clientsRow = z.strictObject({
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
): Promise<{ rows: gardens.ClientRow[]; total: number }> {
  const rows = await tx.rows(clientsRow)`
    SELECT count(*) OVER ()::int AS total,
           jsonb_build_object('id', k.id, 'edition', k.edition, 'name', k.name, 'email', k.email, 'phone', k.phone, 'address', k.address, 'leadDays', k.lead_days, 'note', k.note, 'isBlanked', k.blanked_at IS NOT NULL,
             'sites', (SELECT count(*) FROM site s WHERE s.nursery_id = k.nursery_id AND s.client_id = k.id),
             'openOrders', (SELECT count(*) FROM garden_order o WHERE o.nursery_id = k.nursery_id AND o.client_id = k.id AND o.state = 'open'),
             'nextDueOn', (SELECT min(o.due_on) FROM garden_order o WHERE o.nursery_id = k.nursery_id AND o.client_id = k.id AND o.state = 'open')) AS row
      FROM client k WHERE k.nursery_id = ${nurseryId}::uuid AND ${where}
     ORDER BY lower(k.name), k.id LIMIT ${perPage} OFFSET ${(page - 1) * perPage}`;
  return { rows: rows.map(({ row }) => row), total: rows[0]?.total ?? 0 };
}

/** Clients by name; those whose data were blanked are found only through their orders. */
export const listClients = query({
  name: 'listClients',
  input: gardens.listClients,
  roles: EVERYONE,
  read: async (context, { search, page, perPage }): Promise<Page<gardens.ClientRow>> => {
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
