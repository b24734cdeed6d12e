import { BATCH_UNITS, CONTAINER_KINDS, PLANT_BY_STATES, PROPAGATION_METHODS, ROOT_HABITS } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../../trpc/operation.ts';

export const relatedBatch = z.strictObject({
  batchId: z.string(),
  code: z.string(),
});
export type RelatedBatch = z.infer<typeof relatedBatch>;

export const batchHead = z.strictObject({
  batchId: z.string(),
  code: z.string(),
  plantId: z.string(),
  plantCode: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  rootHabit: z.enum(ROOT_HABITS),
  dormantMonths: z.array(z.number()),
  lastEmergenceMd: z.nullable(z.string()),
  method: z.enum(PROPAGATION_METHODS),
  unit: z.enum(BATCH_UNITS),
  containerId: z.nullable(z.string()),
  containerName: z.nullable(z.string()),
  containerKind: z.nullable(z.enum(CONTAINER_KINDS)),
  cellsPerTray: z.nullable(z.number()),
  startedOn: z.string(),
  startedUnits: z.number(),
  seedsSown: z.nullable(z.number()),
  emergedUnits: z.nullable(z.number()),
  emergedOn: z.nullable(z.string()),
  confinedOn: z.nullable(z.string()),
  containerOn: z.nullable(z.string()),
  targetContainerId: z.nullable(z.string()),
  targetContainerName: z.nullable(z.string()),
  cautiousUnits: z.number(),
  usualUnits: z.number(),
  readyOn: z.nullable(z.string()),
  protocolVersionId: z.nullable(z.string()),
  seedsGrams: z.nullable(z.number()),
  /** The batch of packs its seed was drawn from. */
  parent: z.nullable(relatedBatch),
  plantByOn: z.nullable(z.string()),
  plantByState: z.enum(PLANT_BY_STATES),
  limitOn: z.nullable(z.string()),
  nextOpensOn: z.nullable(z.string()),
  rule: z.nullable(
    z.strictObject({
      basis: z.string(),
      span: z.nullable(z.string()),
      standing: z.string(),
      source: z.nullable(z.string()),
      note: z.string(),
    }),
  ),
  secondWinterOn: z.nullable(z.string()),
  closedOn: z.nullable(z.string()),
  note: z.string(),
  noticeDays: z.number(),
  source: z.strictObject({
    sourceId: z.string(),
    code: z.string(),
    kind: z.string(),
    provenance: z.string(),
    seedZone: z.nullable(z.string()),
    origin: z.string(),
    gatheredOn: z.nullable(z.string()),
    gatheredPrecision: z.nullable(z.string()),
    vendor: z.nullable(z.string()),
    motherLotId: z.nullable(z.string()),
    motherLotCode: z.nullable(z.string()),
  }),
  places: z.array(z.strictObject({ placeId: z.string(), code: z.string(), name: z.string(), units: z.number() })),
});
export type BatchHead = z.infer<typeof batchHead>;

export async function readBatchHead({ tx, nurseryId }: ReadContext, batchId: string): Promise<BatchHead | undefined> {
  const head = await tx.row(batchHead)`
    SELECT b.id::text AS "batchId", b.code, p.id::text AS "plantId", p.code AS "plantCode", p.scientific_name AS "scientificName", p.vernacular_name AS "vernacularName",
           p.root_habit AS "rootHabit", p.dormant_months AS "dormantMonths", p.last_emergence_md AS "lastEmergenceMd", b.method, b.unit,
           b.container_id::text AS "containerId", c.name AS "containerName", c.kind AS "containerKind", c.cells AS "cellsPerTray", b.started_on::text AS "startedOn",
           coalesce((SELECT sum(m.to_units)::int FROM movement_told m WHERE m.nursery_id = b.nursery_id AND m.entry_id = b.created_entry_id), 0) AS "startedUnits",
           b.seeds_sown AS "seedsSown", b.emerged_units AS "emergedUnits", b.emerged_on::text AS "emergedOn", b.confined_on::text AS "confinedOn",
           b.container_on::text AS "containerOn", b.target_container_id::text AS "targetContainerId", t.name AS "targetContainerName", b.cautious_units AS "cautiousUnits",
           b.usual_units AS "usualUnits", b.protocol_version_id::text AS "protocolVersionId", b.seeds_grams::float8 AS "seedsGrams",
           (SELECT jsonb_build_object('batchId', k.id, 'code', k.code) FROM batch_named k WHERE k.nursery_id = b.nursery_id AND k.id = b.parent_batch_id) AS parent, b.ready_on::text AS "readyOn", b.plant_by_on::text AS "plantByOn", b.plant_by_state AS "plantByState", b.limit_on::text AS "limitOn",
           b.next_opens_on::text AS "nextOpensOn",
           CASE WHEN u.id IS NULL THEN NULL ELSE jsonb_build_object('basis', u.basis, 'span', u.span, 'standing', u.standing, 'source', u.source, 'note', u.note) END AS rule,
           b.second_winter_on::text AS "secondWinterOn", b.closed_on::text AS "closedOn", b.note, n.notice_days AS "noticeDays",
           jsonb_build_object('sourceId', s.id, 'code', s.code, 'kind', s.kind, 'provenance', s.provenance, 'seedZone', s.seed_zone, 'origin', s.origin,
             'gatheredOn', s.gathered_on, 'gatheredPrecision', s.gathered_precision, 'vendor', s.vendor, 'motherLotId', s.mother_lot_id, 'motherLotCode', l.code) AS source,
           coalesce((SELECT jsonb_agg(jsonb_build_object('placeId', w.id, 'code', w.code, 'name', w.name, 'units', a.units) ORDER BY w.code)
                       FROM units_standing a JOIN place_named w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
                      WHERE a.nursery_id = b.nursery_id AND a.batch_id = b.id AND a.units > 0), '[]') AS places
      FROM batch_told b
      JOIN nursery_settings n ON n.id = b.nursery_id
      JOIN plant_named p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id
      JOIN source_named s ON s.nursery_id = b.nursery_id AND s.id = b.source_id
      LEFT JOIN lot_named l ON l.nursery_id = s.nursery_id AND l.id = s.mother_lot_id
      LEFT JOIN container_named c ON c.nursery_id = b.nursery_id AND c.id = b.container_id
      LEFT JOIN container_named t ON t.nursery_id = b.nursery_id AND t.id = b.target_container_id
      LEFT JOIN rule_named u ON u.nursery_id = b.nursery_id AND u.id = b.rule_id
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.id = ${batchId}::uuid`;
  return head;
}
