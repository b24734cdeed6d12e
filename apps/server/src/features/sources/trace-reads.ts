import { sources } from '@rootclock/contracts';
import { BATCH_UNITS, DAY_PRECISIONS, PROPAGATION_METHODS, EVERYONE, SEED_KINDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { found } from '../../refusal.ts';
import { query, type ReadContext } from '../../trpc/operation.ts';
import { type BlendPartRow, type BlendRow, readBlends, readParts } from './blends/reads.ts';
import { loadSources, type SourceFacts } from './store.ts';
import {
  loadSeedFacts,
  type PlantSeed,
  readGramsIn,
  readPlantSeed,
  readSeedMovements,
  type SeedFacts,
  type SeedMovementRow,
} from './stores/reads.ts';
import { readTests, type ViabilityTestRow } from './viability/reads.ts';

export const tracedBatch = z.strictObject({
  batchId: z.string(),
  code: z.string(),
  sourceCode: z.string(),
  method: z.enum(PROPAGATION_METHODS),
  unit: z.enum(BATCH_UNITS),
  startedOn: z.string(),
  closedOn: z.nullable(z.string()),
  /** With which it began: cells, trays, pieces or packs. */
  startedUnits: z.number(),
  units: z.number(),
});
export type TracedBatch = z.infer<typeof tracedBatch>;
export const tracedLot = z.strictObject({
  lotId: z.string(),
  code: z.string(),
  plantName: z.string(),
  sourceCode: z.string(),
  containerName: z.string(),
  pottedOn: z.string(),
  pottedPrecision: z.enum(DAY_PRECISIONS),
  closedOn: z.nullable(z.string()),
  plantByOn: z.nullable(z.string()),
  units: z.number(),
});
export type TracedLot = z.infer<typeof tracedLot>;
export const tracedGarden = z.strictObject({
  orderId: z.string(),
  code: z.string(),
  clientName: z.string(),
  siteName: z.nullable(z.string()),
  plantedUnits: z.number(),
  firstOn: z.string(),
  lastOn: z.string(),
});
export type TracedGarden = z.infer<typeof tracedGarden>;
export const daughterSource = z.strictObject({
  sourceId: z.string(),
  code: z.string(),
  motherCode: z.string(),
});
export type DaughterSource = z.infer<typeof daughterSource>;

/** The most of each that a page shows; the counts are of all. */
const MOST = 300;

/** Seed in store, how good it was found to be, and what it was mixed of or into. */
export interface SeedOfSource extends Omit<SeedFacts, 'sourceId'> {
  /** Came in over all its time, and was not taken back. */
  gramsIn: number;
  plantSeed: PlantSeed | null;
  movements: SeedMovementRow[];
  tests: ViabilityTestRow[];
}

export interface SourceStory extends Omit<SourceFacts, 'id'> {
  sourceId: string;
  vernacularName: string;
  motherLotCode: string | null;
  /** Null of plants and beds, which give cuttings and divisions that nobody weighs. */
  seed: SeedOfSource | null;
  parts: BlendPartRow[];
  blends: BlendRow[];
  batches: TracedBatch[];
  lots: TracedLot[];
  gardens: TracedGarden[];
  /** Sources that are the seed or cuttings of plants of this one. */
  daughters: DaughterSource[];
  counts: { batches: number; lots: number; gardens: number };
}

/** A source and all that came of it: batches, lots, what was gathered from those in turn, and the gardens it was planted in. */
export const readSource = query({
  name: 'readSource',
  input: sources.readSource,
  roles: EVERYONE,
  read: async (context, { sourceId }): Promise<SourceStory> => {
    const { id, ...facts } = found((await loadSources(context, [sourceId])).get(sourceId), 'source', 'sourceId');
    const names = await readNames(context, id);
    const descent = await readDescent(context, id);
    const lotIds = descent.filter((each) => each.kind === 'lot').map((each) => each.id);
    const batchIds = descent.filter((each) => each.kind === 'batch').map((each) => each.id);
    const gardens = await readGardens(context, lotIds);
    return {
      ...facts,
      sourceId: id,
      ...names,
      seed: SEED_KINDS.includes(facts.kind) ? await readSeed(context, id, facts.plantId) : null,
      parts: await readParts(context, id),
      blends: await readBlends(context, id),
      batches: await readBatches(context, batchIds),
      lots: await readLots(context, lotIds),
      gardens: gardens.slice(0, MOST),
      daughters: await readDaughters(context, lotIds),
      counts: { batches: batchIds.length, lots: lotIds.length, gardens: gardens.length },
    };
  },
});

async function readSeed(context: ReadContext, sourceId: string, plantId: string): Promise<SeedOfSource | null> {
  const [facts] = await loadSeedFacts(context, [sourceId]);
  if (!facts) return null;
  const { sourceId: _sourceId, ...seed } = facts;
  return {
    ...seed,
    gramsIn: await readGramsIn(context, sourceId),
    plantSeed: await readPlantSeed(context, plantId),
    movements: await readSeedMovements(context, sourceId),
    tests: await readTests(context, sourceId),
  };
}

const sourceNames = z.strictObject({ vernacularName: z.string(), motherLotCode: z.nullable(z.string()) });

async function readNames(
  { tx, nurseryId }: ReadContext,
  sourceId: string,
): Promise<{ vernacularName: string; motherLotCode: string | null }> {
  const row = await tx.row(sourceNames)`
    SELECT p.vernacular_name AS "vernacularName", m.code AS "motherLotCode"
      FROM source s JOIN plant_named p ON p.nursery_id = s.nursery_id AND p.id = s.plant_id
                    LEFT JOIN lot_named m ON m.nursery_id = s.nursery_id AND m.id = s.mother_lot_id
     WHERE s.nursery_id = ${nurseryId}::uuid AND s.id = ${sourceId}::uuid`;
  return row ?? { vernacularName: '', motherLotCode: null };
}

const descentRow = z.strictObject({ id: z.string(), kind: z.enum(['lot', 'batch']) });

/** All lots and batches of the source, of blends it went into, of what was gathered from its plants, and all lots made from those: by lineage, not by name. */
async function readDescent(
  { tx, nurseryId }: ReadContext,
  sourceId: string,
): Promise<{ id: string; kind: 'lot' | 'batch' }[]> {
  return tx.rows(descentRow)`
    WITH RECURSIVE descent (id, kind) AS (
      SELECT ${sourceId}::uuid, 'source'
      UNION
      SELECT y.id, y.kind FROM descent d CROSS JOIN LATERAL (
        SELECT l.id, 'lot' AS kind FROM lot_named l WHERE l.nursery_id = ${nurseryId}::uuid AND l.source_id = d.id
        UNION ALL
        SELECT b.id, 'batch' FROM batch_named b WHERE b.nursery_id = ${nurseryId}::uuid AND b.source_id = d.id
        UNION ALL
        SELECT p.source_id, 'source' FROM source_part p WHERE p.nursery_id = ${nurseryId}::uuid AND p.part_source_id = d.id
        UNION ALL
        SELECT g.child_lot_id, 'lot' FROM lineage_told g WHERE g.nursery_id = ${nurseryId}::uuid AND g.parent_id = d.id
        UNION ALL
        SELECT s.id, 'source' FROM source s WHERE s.nursery_id = ${nurseryId}::uuid AND s.mother_lot_id = d.id) y)
    SELECT id::text, kind FROM descent WHERE kind <> 'source'`;
}

async function readBatches({ tx, nurseryId }: ReadContext, ids: readonly string[]): Promise<TracedBatch[]> {
  return tx.rows(tracedBatch)`
    SELECT b.id::text AS "batchId", b.code, s.code AS "sourceCode", b.method, b.unit, b.started_on::text AS "startedOn", b.closed_on::text AS "closedOn",
           coalesce((SELECT sum(a.units)::int FROM account_told a WHERE a.nursery_id = b.nursery_id AND a.batch_id = b.id AND a.units > 0), 0) AS units,
           coalesce((SELECT sum(m.to_units)::int FROM movement_told m JOIN account_told a ON a.nursery_id = m.nursery_id AND a.id = m.to_account_id AND a.batch_id = b.id
                      WHERE m.nursery_id = b.nursery_id AND m.entry_id = b.created_entry_id), 0) AS "startedUnits"
      FROM batch_told b JOIN source s ON s.nursery_id = b.nursery_id AND s.id = b.source_id
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.id = ANY (${[...ids]}::uuid[]) ORDER BY b.started_on DESC, b.code LIMIT ${MOST}`;
}

async function readLots({ tx, nurseryId }: ReadContext, ids: readonly string[]): Promise<TracedLot[]> {
  return tx.rows(tracedLot)`
    SELECT l.id::text AS "lotId", l.code, p.scientific_name AS "plantName", s.code AS "sourceCode", c.name AS "containerName", l.potted_on::text AS "pottedOn",
           l.potted_precision AS "pottedPrecision", l.closed_on::text AS "closedOn", l.plant_by_on::text AS "plantByOn",
           coalesce((SELECT sum(a.units)::int FROM units_standing a WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.units > 0), 0) AS units
      FROM lot_named l JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
                 JOIN source s ON s.nursery_id = l.nursery_id AND s.id = l.source_id
                 JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = ANY (${[...ids]}::uuid[]) ORDER BY l.closed_on IS NOT NULL, l.potted_on DESC, l.code LIMIT ${MOST}`;
}

/** What was planted and not taken back, by garden order: staged plants know their line, others the line their entry is about. */
async function readGardens({ tx, nurseryId }: ReadContext, lotIds: readonly string[]): Promise<TracedGarden[]> {
  return tx.rows(tracedGarden)`
    WITH accounts AS (
      SELECT a.id, a.line_id FROM account_told a WHERE a.nursery_id = ${nurseryId}::uuid AND a.lot_id = ANY (${[...lotIds]}::uuid[])),
    planted AS (
      SELECT m.entry_id AS told_by, a.line_id, m.from_units AS units, e.happened_on
        FROM accounts a JOIN movement_told m ON m.nursery_id = ${nurseryId}::uuid AND m.from_account_id = a.id AND m.to_account_id = account_key('outside', 'outside', 'planted')
        JOIN entry_told e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id
      UNION ALL
      SELECT coalesce(e.reverses_id, e.id), a.line_id, -m.to_units, NULL
        FROM accounts a JOIN movement_told m ON m.nursery_id = ${nurseryId}::uuid AND m.to_account_id = a.id AND m.from_account_id = account_key('outside', 'outside', 'planted')
        JOIN entry_told e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id)
    SELECT o.id::text AS "orderId", o.code, c.name AS "clientName", t.name AS "siteName", sum(x.units)::int AS "plantedUnits",
           min(x.happened_on)::text AS "firstOn", max(x.happened_on)::text AS "lastOn"
      FROM planted x
      JOIN line_asked n ON n.nursery_id = ${nurseryId}::uuid AND n.id = coalesce(x.line_id,
           (SELECT j.subject_id FROM entry_about j WHERE j.nursery_id = ${nurseryId}::uuid AND j.entry_id = x.told_by AND j.subject_kind = 'line' ORDER BY j.subject_id LIMIT 1))
      JOIN order_named o ON o.nursery_id = n.nursery_id AND o.id = n.order_id
      JOIN client_named c ON c.nursery_id = o.nursery_id AND c.id = o.client_id
      LEFT JOIN site_named t ON t.nursery_id = o.nursery_id AND t.id = o.site_id
     GROUP BY o.id, o.code, c.name, t.name HAVING sum(x.units) > 0 ORDER BY max(x.happened_on) DESC, o.code`;
}

async function readDaughters({ tx, nurseryId }: ReadContext, lotIds: readonly string[]): Promise<DaughterSource[]> {
  return tx.rows(daughterSource)`
    SELECT s.id::text AS "sourceId", s.code, l.code AS "motherCode" FROM source s JOIN lot_named l ON l.nursery_id = s.nursery_id AND l.id = s.mother_lot_id
     WHERE s.nursery_id = ${nurseryId}::uuid AND s.mother_lot_id = ANY (${[...lotIds]}::uuid[]) ORDER BY s.code LIMIT ${MOST}`;
}
