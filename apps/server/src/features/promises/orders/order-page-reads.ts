import type { promises } from '@rootclock/contracts';
import { ENTRY_KINDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';

export interface Namesake {
  plantId: string;
  scientificName: string;
}

/** A line as it is stored, with what the ledger says of it. */
export const storedLine = z.strictObject({
  id: z.string(),
  edition: z.number(),
  plantId: z.string(),
  scientificName: z.string(),
  units: z.number(),
  vernacularName: z.string(),
  containerCode: z.string(),
  containerId: z.string(),
  rank: z.number(),
  plantCode: z.string(),
  containerName: z.string(),
  bedId: z.nullable(z.string()),
  bedName: z.nullable(z.string()),
  seedZone: z.nullable(z.string()),
  wildType: z.boolean(),
  untreated: z.boolean(),
  withdrawnOn: z.nullable(z.string()),
  kit: z.nullable(z.strictObject({ name: z.string(), units: z.number() })),
  alternatives: z.array(
    z.strictObject({
      plantId: z.string(),
      scientificName: z.string(),
      containerId: z.string(),
      containerCode: z.string(),
      penalty: z.number(),
    }),
  ),
  staged: z.array(
    z.strictObject({
      lotId: z.string(),
      lotCode: z.string(),
      scientificName: z.string(),
      containerCode: z.string(),
      units: z.number(),
    }),
  ),
  reservedUnits: z.number(),
  stagedUnits: z.number(),
  deliveredUnits: z.number(),
  notNatives: z.array(z.strictObject({ plantId: z.string(), scientificName: z.string() })),
  namesakes: z.array(z.strictObject({ plantId: z.string(), scientificName: z.string() })),
  isNative: z.nullable(z.boolean()),
  poisonsLivestock: z.boolean(),
});
export type StoredLine = z.infer<typeof storedLine>;

const lineRow = z.strictObject({ row: storedLine });

/** The lines of an order, withdrawn ones last. */
export async function readLines({ tx, nurseryId }: ReadContext, orderId: string): Promise<StoredLine[]> {
  const rows = await tx.rows(lineRow)`
    SELECT jsonb_build_object('id', l.id, 'edition', l.edition, 'rank', l.rank, 'plantId', p.id, 'plantCode', p.code, 'scientificName', p.scientific_name, 'vernacularName', p.vernacular_name,
             'containerId', c.id, 'containerCode', c.code, 'containerName', c.name, 'bedId', b.id, 'bedName', b.name, 'units', l.units, 'seedZone', l.seed_zone,
             'wildType', l.wild_type, 'untreated', l.untreated, 'withdrawnOn', l.withdrawn_on,
             'kit', (SELECT jsonb_build_object('name', h.name, 'units', l.kit_units) FROM kit_told h WHERE h.nursery_id = l.nursery_id AND h.id = l.kit_id),
             'alternatives', coalesce((SELECT jsonb_agg(jsonb_build_object('plantId', q.id, 'scientificName', q.scientific_name, 'containerId', d.id, 'containerCode', d.code, 'penalty', x.penalty)
                                                ORDER BY x.penalty, q.scientific_name, d.code)
                                         FROM alternative_told x JOIN plant_named q ON q.nursery_id = x.nursery_id AND q.id = x.plant_id JOIN container_named d ON d.nursery_id = x.nursery_id AND d.id = x.container_id
                                        WHERE x.nursery_id = l.nursery_id AND x.line_id = l.id), '[]'),
             'staged', coalesce((SELECT jsonb_agg(jsonb_build_object('lotId', t.id, 'lotCode', t.code, 'scientificName', q.scientific_name, 'containerCode', d.code, 'units', a.units) ORDER BY t.code)
                                   FROM units_standing a JOIN lot_named t ON t.nursery_id = a.nursery_id AND t.id = a.lot_id JOIN plant_named q ON q.nursery_id = t.nursery_id AND q.id = t.plant_id
                                   JOIN container_named d ON d.nursery_id = t.nursery_id AND d.id = t.container_id
                                  WHERE a.nursery_id = l.nursery_id AND a.line_id = l.id AND a.units > 0), '[]'),
             'reservedUnits', g.reserved_units, 'stagedUnits', g.staged_units, 'deliveredUnits', g.delivered_units,
             'isNative', CASE WHEN s.region IS NOT NULL THEN s.region = ANY (p.native_regions) END,
             'poisonsLivestock', coalesce(s.livestock_near, false) AND 'keep-from-livestock' = ANY (p.handling),
             'notNatives', CASE WHEN o.natives_only THEN (
               SELECT coalesce(jsonb_agg(DISTINCT jsonb_build_object('plantId', q.id, 'scientificName', q.scientific_name)), '[]')
                 FROM (SELECT l.plant_id UNION SELECT x.plant_id FROM alternative_told x WHERE x.nursery_id = l.nursery_id AND x.line_id = l.id) a
                 JOIN plant_named q ON q.nursery_id = l.nursery_id AND q.id = a.plant_id
                WHERE s.region IS NULL OR s.region <> ALL (q.native_regions)) ELSE '[]' END,
             'namesakes', '[]'::jsonb) AS row
      FROM line_told l
      JOIN order_named o ON o.nursery_id = l.nursery_id AND o.id = l.order_id
      LEFT JOIN site_named s ON s.nursery_id = o.nursery_id AND s.id = o.site_id
      JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
      JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
      LEFT JOIN bed_told b ON b.nursery_id = l.nursery_id AND b.id = l.bed_id
      JOIN line_progress g ON g.nursery_id = l.nursery_id AND g.line_id = l.id
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.order_id = ${orderId}::uuid
     ORDER BY l.withdrawn_on NULLS FIRST, l.rank`;
  return rows.map(({ row }) => row);
}

const namesakeOf = z.strictObject({ of: z.string(), plantId: z.string(), scientificName: z.string() });

/** Other plants of the nursery that people call by a common name of these plants. */
export async function readNamesakes(
  { tx, nurseryId }: ReadContext,
  plantIds: readonly string[],
): Promise<Map<string, Namesake[]>> {
  const rows = await tx.rows(namesakeOf)`
    SELECT DISTINCT n.plant_id::text AS of, p.id::text AS "plantId", p.scientific_name AS "scientificName"
      FROM plant_called n
      JOIN plant_called o ON o.nursery_id = n.nursery_id AND o.kind = 'common' AND o.name_key = n.name_key AND o.plant_id <> n.plant_id
      JOIN plant_named p ON p.nursery_id = o.nursery_id AND p.id = o.plant_id AND p.retired_at IS NULL
     WHERE n.nursery_id = ${nurseryId}::uuid AND n.kind = 'common' AND n.plant_id = ANY (${[...plantIds]}::uuid[])
     ORDER BY "scientificName"`;
  const byPlant = new Map<string, Namesake[]>();
  for (const { of, ...namesake } of rows) byPlant.set(of, [...(byPlant.get(of) ?? []), namesake]);
  return byPlant;
}

const lotStanding = z.strictObject({
  lotId: z.string(),
  places: z.array(z.strictObject({ placeId: z.string(), code: z.string(), units: z.number() })),
});

/** Where lots stand, by lot; quarantine places are left out, since nothing is pulled from there. */
export async function readStandings(
  { tx, nurseryId }: ReadContext,
  lotIds: readonly string[],
): Promise<Map<string, { placeId: string; code: string; units: number }[]>> {
  const rows = await tx.rows(lotStanding)`
    SELECT a.lot_id::text AS "lotId", jsonb_agg(jsonb_build_object('placeId', w.id, 'code', w.code, 'units', a.units) ORDER BY w.code) AS places
      FROM units_standing a JOIN place_named w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
     WHERE a.nursery_id = ${nurseryId}::uuid AND a.lot_id = ANY (${[...lotIds]}::uuid[]) AND a.units > 0 AND w.kind <> 'quarantine' GROUP BY a.lot_id`;
  return new Map(rows.map(({ lotId, places }) => [lotId, places]));
}

const entryOfOrder = z.strictObject({
  id: z.string(),
  kind: z.enum(ENTRY_KINDS),
  happenedOn: z.string(),
  note: z.string(),
  personName: z.nullable(z.string()),
  units: z.number(),
  reversed: z.boolean(),
});

/** What happened for an order, newest first: entries that moved plants to or from the staging of its lines. */
export async function readEntries(
  { tx, nurseryId }: ReadContext,
  orderId: string,
): Promise<promises.OrderPage['entries']> {
  return tx.rows(entryOfOrder)`
    SELECT e.id::text, e.kind, e.happened_on::text AS "happenedOn", e.note, n.name AS "personName", u.units::int AS units,
           EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id) AS reversed
      FROM (SELECT m.entry_id, greatest(sum(m.from_units) FILTER (WHERE m.from_account_id = a.id), sum(m.to_units) FILTER (WHERE m.to_account_id = a.id)) AS units
              FROM line_asked l
              JOIN account_told a ON a.nursery_id = l.nursery_id AND a.line_id = l.id
              JOIN movement_told m ON m.nursery_id = a.nursery_id AND (m.from_account_id = a.id OR m.to_account_id = a.id)
             WHERE l.nursery_id = ${nurseryId}::uuid AND l.order_id = ${orderId}::uuid GROUP BY m.entry_id) u
      JOIN entry_told e ON e.nursery_id = ${nurseryId}::uuid AND e.id = u.entry_id
      LEFT JOIN nursery_people() n ON n.person_id = e.person_id
     ORDER BY e.version DESC`;
}

export const orderCircumstances = z.strictObject({
  nativesOnly: z.boolean(),
  leadDays: z.number(),
  region: z.nullable(z.string()),
  livestockNear: z.boolean(),
  siteAddress: z.nullable(z.string()),
});
export type OrderCircumstances = z.infer<typeof orderCircumstances>;

export async function readCircumstances({ tx, nurseryId }: ReadContext, orderId: string): Promise<OrderCircumstances> {
  const row = await tx.row(orderCircumstances)`
    SELECT o.natives_only AS "nativesOnly", k.lead_days AS "leadDays", s.region, coalesce(s.livestock_near, false) AS "livestockNear", s.address AS "siteAddress"
      FROM order_named o JOIN client_named k ON k.nursery_id = o.nursery_id AND k.id = o.client_id LEFT JOIN site_told s ON s.nursery_id = o.nursery_id AND s.id = o.site_id
     WHERE o.nursery_id = ${nurseryId}::uuid AND o.id = ${orderId}::uuid`;
  return row ?? { nativesOnly: false, leadDays: 0, region: null, livestockNear: false, siteAddress: null };
}
