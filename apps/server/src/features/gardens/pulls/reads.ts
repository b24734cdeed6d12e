import { gardens } from '@rootclock/contracts';
import { HANDLING_RULES, ORDER_KINDS, addDays, EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query, type ReadContext } from '../../../trpc/operation.ts';

const toPullRow = z.strictObject({
  orderId: z.string(),
  code: z.string(),
  kind: z.enum(ORDER_KINDS),
  dueOn: z.string(),
  clientName: z.string(),
  siteName: z.nullable(z.string()),
  pullIssuedOn: z.nullable(z.string()),
  wantedUnits: z.number(),
  toPullUnits: z.number(),
  stagedUnits: z.number(),
  deliveredUnits: z.number(),
  shortUnits: z.number(),
});

/** Open orders that are due within so many days, overdue ones included, the nearest first. */
export const listToPull = query({
  name: 'listToPull',
  input: gardens.listToPull,
  roles: EVERYONE,
  read: async ({ tx, nurseryId, today }, { withinDays }): Promise<gardens.ToPullRow[]> => tx.rows(toPullRow)`
    SELECT o.id::text AS "orderId", o.code, o.kind, o.due_on::text AS "dueOn", k.name AS "clientName", t.name AS "siteName", o.pull_issued_on::text AS "pullIssuedOn",
           u.wanted AS "wantedUnits", u.to_pull AS "toPullUnits", u.staged AS "stagedUnits", u.delivered AS "deliveredUnits", u.short AS "shortUnits"
      FROM order_named o
      JOIN client_named k ON k.nursery_id = o.nursery_id AND k.id = o.client_id
      LEFT JOIN site_named t ON t.nursery_id = o.nursery_id AND t.id = o.site_id
      CROSS JOIN LATERAL (
        SELECT coalesce(sum(l.units), 0)::int AS wanted, coalesce(sum(v.lots), 0)::int AS to_pull, coalesce(sum(g.staged_units), 0)::int AS staged,
               coalesce(sum(g.delivered_units), 0)::int AS delivered, coalesce(sum(greatest(0, l.units - g.reserved_units - g.staged_units - g.delivered_units)), 0)::int AS short
          FROM line_asked l
          CROSS JOIN LATERAL (SELECT * FROM line_progress p WHERE p.nursery_id = l.nursery_id AND p.line_id = l.id OFFSET 0) g
          CROSS JOIN LATERAL (SELECT sum(r.units) AS lots FROM units_reserved r WHERE r.nursery_id = l.nursery_id AND r.line_id = l.id AND r.lot_id IS NOT NULL) v
         WHERE l.nursery_id = o.nursery_id AND l.order_id = o.id AND l.withdrawn_on IS NULL) u
     WHERE o.nursery_id = ${nurseryId}::uuid AND o.state = 'open' AND o.due_on <= ${addDays(today, withinDays)}::date
     ORDER BY o.due_on, o.code`,
});

export const plantCare = z.strictObject({
  plantId: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  handling: z.array(z.enum(HANDLING_RULES)),
  cautions: z.array(z.strictObject({ text: z.string(), standing: z.string(), source: z.nullable(z.string()) })),
  genus: z.string(),
});
export type PlantCare = z.infer<typeof plantCare>;

const CAUTION_FIELDS = ['caution', 'sapCaution', 'identityCaution', 'plantingCaution', 'spreadCaution'];

/** How plants are handled and what can hurt, as their pages say. */
export async function readCare({ tx, nurseryId }: ReadContext, plantIds: readonly string[]): Promise<PlantCare[]> {
  return tx.rows(plantCare)`
    SELECT p.id::text AS "plantId", p.scientific_name AS "scientificName", p.vernacular_name AS "vernacularName", p.genus, p.handling,
           coalesce((SELECT jsonb_agg(jsonb_build_object('text', f.value #>> '{}', 'standing', f.standing, 'source', f.source) ORDER BY array_position(${CAUTION_FIELDS}::text[], f.field))
                       FROM plant_told f WHERE f.nursery_id = p.nursery_id AND f.plant_id = p.id AND f.field = ANY (${CAUTION_FIELDS}::text[]) AND jsonb_typeof(f.value) = 'string'), '[]') AS cautions
      FROM plant_named p WHERE p.nursery_id = ${nurseryId}::uuid AND p.id = ANY (${[...plantIds]}::uuid[]) ORDER BY p.scientific_name`;
}

export const placeState = z.strictObject({
  id: z.string(),
  name: z.string(),
  closedUntilAt: z.nullable(z.string()),
  closedReason: z.nullable(z.string()),
});
export type PlaceState = z.infer<typeof placeState>;

/** Places with their names, and until when one is closed if it is closed now. */
export async function readPlaceStates(
  { tx, nurseryId, now }: ReadContext,
  placeIds: readonly string[],
): Promise<Map<string, PlaceState>> {
  const rows = await tx.rows(placeState)`
    SELECT id::text, name, CASE WHEN closed_until_at > ${now} THEN to_char(closed_until_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') END AS "closedUntilAt",
           CASE WHEN closed_until_at > ${now} THEN closed_reason END AS "closedReason"
      FROM place_told WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...placeIds]}::uuid[])`;
  return new Map(rows.map((row) => [row.id, row]));
}

const heldLot = z.strictObject({ lotId: z.string(), reasons: z.array(z.string()) });

/** Reasons for which lots are held, by lot; a reservation never stands on one, but staged plants may. */
export async function readHolds(
  { tx, nurseryId }: ReadContext,
  lotIds: readonly string[],
): Promise<Map<string, string[]>> {
  const rows = await tx.rows(heldLot)`
    SELECT lot_id::text AS "lotId", array_agg(reason ORDER BY reason) AS reasons FROM lot_held
     WHERE nursery_id = ${nurseryId}::uuid AND lot_id = ANY (${[...lotIds]}::uuid[]) GROUP BY lot_id`;
  return new Map(rows.map(({ lotId, reasons }) => [lotId, reasons]));
}
