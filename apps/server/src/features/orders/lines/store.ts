import * as z from 'zod/mini';
import { columns, editedRow } from '../../../db/editions.ts';
import { sql } from '../../../db/sql.ts';
import { found, refuse } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';
import { loadOpenOrder, type OrderFacts } from '../orders/store.ts';

export const lineFacts = z.strictObject({
  id: z.string(),
  orderId: z.string(),
  scientificName: z.string(),
  /** Of the container asked for, where it is a tray. */
  cells: z.nullable(z.number()),
  units: z.number(),
  stagedUnits: z.number(),
  deliveredUnits: z.number(),
  withdrawnOn: z.nullable(z.string()),
  accepts: z.array(z.strictObject({ plantId: z.string(), containerId: z.string(), name: z.string() })),
});

export type LineFacts = z.infer<typeof lineFacts>;

/** Loads lines by id; one that is not this nursery's answers as not found. */
export async function loadLines(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[],
  field = 'lineId',
): Promise<Map<string, LineFacts>> {
  const rows = await tx.rows(lineFacts)`
    SELECT l.id::text, l.order_id::text AS "orderId", p.scientific_name AS "scientificName", k.cells, l.units, g.staged_units AS "stagedUnits", g.delivered_units AS "deliveredUnits",
           l.withdrawn_on::text AS "withdrawnOn",
           (SELECT jsonb_agg(jsonb_build_object('plantId', x.plant_id, 'containerId', x.container_id, 'name', q.scientific_name || ', ' || c.code) ORDER BY x.penalty, q.scientific_name)
              FROM (SELECT l.plant_id, l.container_id, 0 AS penalty UNION ALL
                    SELECT a.plant_id, a.container_id, a.penalty FROM line_alternative a WHERE a.nursery_id = l.nursery_id AND a.line_id = l.id) x
              JOIN plant_named q ON q.nursery_id = l.nursery_id AND q.id = x.plant_id
              JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = x.container_id) AS accepts
      FROM order_line l
      JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
      JOIN container_named k ON k.nursery_id = l.nursery_id AND k.id = l.container_id
      JOIN line_progress g ON g.nursery_id = l.nursery_id AND g.line_id = l.id
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = ANY (${[...ids]}::uuid[])`;
  const byId = new Map(rows.map((row) => [row.id, row]));
  for (const id of ids) found(byId.get(id), 'line', field);
  return byId;
}

export async function loadOpenLine(context: ReadContext, id: string): Promise<{ line: LineFacts; order: OrderFacts }> {
  const line = found((await loadLines(context, [id])).get(id), 'line', 'lineId');
  const order = await loadOpenOrder(context, line.orderId);
  if (line.withdrawnOn !== null) refuse('line-withdrawn', { plant: line.scientificName }, 'lineId');
  return { line, order };
}

const namedPlant = z.strictObject({ id: z.string(), name: z.string() });

/** Scientific names of plants by id; one that is retired or not this nursery's answers as not found. */
export async function loadPlantNames(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[],
  field: string,
): Promise<Map<string, string>> {
  const rows = await tx.rows(namedPlant)`
    SELECT id::text, scientific_name AS name FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...ids]}::uuid[]) AND retired_at IS NULL`;
  const byId = new Map(rows.map(({ id, name }) => [id, name]));
  for (const id of ids) found(byId.get(id), 'plant', field);
  return byId;
}

const nativePlant = z.strictObject({ id: z.string(), scientificName: z.string(), nativeRegions: z.array(z.string()) });

/** What is known of where plants are native, by id. */
export async function loadNatives(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[],
): Promise<Map<string, { scientificName: string; nativeRegions: string[] }>> {
  const rows = await tx.rows(nativePlant)`
    SELECT id::text, scientific_name AS "scientificName", native_regions AS "nativeRegions" FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...ids]}::uuid[])`;
  return new Map(rows.map(({ id, ...plant }) => [id, plant]));
}

const freeRank = z.strictObject({ rank: z.number() });

/** The rank behind all others: what is promised later is served later. */
export async function nextRank({ tx, nurseryId }: CommandContext): Promise<number> {
  const row = await tx.row(
    freeRank,
  )`SELECT coalesce(max(rank), 0) + 1 AS rank FROM order_line WHERE nursery_id = ${nurseryId}::uuid`;
  return row?.rank ?? 1;
}

export interface LineRow {
  lineId: string;
  plantId: string;
  containerId: string;
  units: number;
  bedId: string | null;
  seedZone: string | null;
  wildType: boolean;
  untreated: boolean;
  alternatives: { plantId: string; containerId: string; penalty: number }[];
  /** The kit that it comes with, and how many of it. */
  kit: { kitId: string; units: number } | null;
}

export async function insertLines(context: CommandContext, orderId: string, lines: readonly LineRow[]): Promise<void> {
  if (lines.length === 0) return;
  const first = await nextRank(context);
  const rows = JSON.stringify(
    lines.map((line, at) => ({
      ...line,
      rank: first + at,
      kitId: line.kit?.kitId ?? null,
      kitUnits: line.kit?.units ?? null,
    })),
  );
  await context.tx.run`
    INSERT INTO order_line (nursery_id, id, order_id, bed_id, rank, plant_id, container_id, units, seed_zone, wild_type, untreated, kit_id, kit_units)
    SELECT ${context.nurseryId}::uuid, n."lineId", ${orderId}::uuid, n."bedId", n.rank, n."plantId", n."containerId", n.units, n."seedZone", n."wildType", n.untreated, n."kitId", n."kitUnits"
      FROM jsonb_to_recordset(${rows}::jsonb) AS n ("lineId" uuid, "bedId" uuid, rank int, "plantId" uuid, "containerId" uuid, units int, "seedZone" text, "wildType" boolean, untreated boolean, "kitId" uuid, "kitUnits" int)`;
  await insertAlternatives(context, lines);
}

export async function insertAlternatives(
  { tx, nurseryId }: CommandContext,
  lines: readonly Pick<LineRow, 'lineId' | 'alternatives'>[],
): Promise<void> {
  const rows = lines.flatMap(({ lineId, alternatives }) =>
    alternatives.map((alternative) => ({ lineId, ...alternative })),
  );
  if (rows.length === 0) return;
  await tx.run`
    INSERT INTO line_alternative (nursery_id, line_id, plant_id, container_id, penalty)
    SELECT ${nurseryId}::uuid, n."lineId", n."plantId", n."containerId", n.penalty
      FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS n ("lineId" uuid, "plantId" uuid, "containerId" uuid, penalty int)`;
}

export async function updateLine(
  context: CommandContext,
  line: Omit<LineRow, 'plantId' | 'containerId' | 'kit'>,
): Promise<void> {
  const { tx, nurseryId } = context;
  await tx.run`
    UPDATE order_line SET units = ${line.units}, bed_id = ${line.bedId}::uuid, seed_zone = ${line.seedZone}, wild_type = ${line.wildType}, untreated = ${line.untreated}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${line.lineId}::uuid`;
  await tx.run`DELETE FROM line_alternative WHERE nursery_id = ${nurseryId}::uuid AND line_id = ${line.lineId}::uuid`;
  await insertAlternatives(context, [line]);
}

/** Sends lines behind all others, in the order given. */
export async function setRanks(
  { tx, nurseryId }: CommandContext,
  ranks: readonly { lineId: string; rank: number }[],
): Promise<void> {
  if (ranks.length === 0) return;
  await tx.run`
    UPDATE order_line l SET rank = r.rank FROM jsonb_to_recordset(${JSON.stringify(ranks)}::jsonb) AS r ("lineId" uuid, rank int)
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = r."lineId"`;
}

export async function setWithdrawn({ tx, nurseryId, today }: CommandContext, lineId: string): Promise<void> {
  await tx.run`UPDATE order_line SET withdrawn_on = ${today}::date WHERE nursery_id = ${nurseryId}::uuid AND id = ${lineId}::uuid`;
}

export const lineEdits = editedRow<{ lineId: string }>({
  table: 'order_line',
  row: ({ lineId }) => sql`r.id = ${lineId}::uuid`,
  fields: {
    ...columns('units', 'bedId', 'seedZone', 'wildType', 'untreated'),
    alternatives: `coalesce((SELECT jsonb_agg(jsonb_build_object('plantId', a.plant_id, 'containerId', a.container_id, 'penalty', a.penalty)) FROM line_alternative a
                     WHERE a.nursery_id = r.nursery_id AND a.line_id = r.id), '[]')`,
  },
});

const openLine = z.strictObject({ id: z.string() });

/** Open lines of these clients, whose leave-by days follow the client's lead, and of these sites, where they follow the region's planting windows. */
export async function openLinesOf(
  { tx, nurseryId }: ReadContext,
  clientIds: ReadonlySet<string>,
  siteIds: ReadonlySet<string>,
): Promise<string[]> {
  const rows = await tx.rows(openLine)`
    SELECT l.id::text FROM garden_order o JOIN order_line l ON l.nursery_id = o.nursery_id AND l.order_id = o.id
     WHERE o.nursery_id = ${nurseryId}::uuid AND (o.client_id = ANY (${[...clientIds]}::uuid[]) OR o.site_id = ANY (${[...siteIds]}::uuid[]))
       AND o.state = 'open' AND l.withdrawn_on IS NULL`;
  return rows.map(({ id }) => id);
}
