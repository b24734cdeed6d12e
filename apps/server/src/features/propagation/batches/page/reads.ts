import type { BatchUnit, ContainerKind, CountKind, ObservationKind, PlantByState, PropagationMethod, RootHabit } from '@rootclock/domain';
import type { ReadContext } from '../../../../trpc/operation.ts';

export interface BatchHead {
  batchId: string;
  code: string;
  plantId: string;
  plantCode: string;
  scientificName: string;
  vernacularName: string;
  rootHabit: RootHabit;
  dormantMonths: number[];
  lastEmergenceMd: string | null;
  method: PropagationMethod;
  unit: BatchUnit;
  containerId: string | null;
  containerName: string | null;
  containerKind: ContainerKind | null;
  cellsPerTray: number | null;
  startedOn: string;
  startedUnits: number;
  seedsSown: number | null;
  emergedUnits: number | null;
  emergedOn: string | null;
  confinedOn: string | null;
  containerOn: string | null;
  targetContainerId: string | null;
  targetContainerName: string | null;
  cautiousUnits: number;
  usualUnits: number;
  readyOn: string | null;
  protocolVersionId: string | null;
  seedsGrams: number | null;
  /** The batch of packs its seed was drawn from. */
  parent: RelatedBatch | null;
  plantByOn: string | null;
  plantByState: PlantByState;
  limitOn: string | null;
  nextOpensOn: string | null;
  rule: { basis: string; span: string | null; standing: string; source: string | null; note: string } | null;
  secondWinterOn: string | null;
  closedOn: string | null;
  note: string;
  noticeDays: number;
  source: { sourceId: string; code: string; kind: string; provenance: string; seedZone: string | null; origin: string; gatheredOn: string | null; gatheredPrecision: string | null; vendor: string | null; motherLotId: string | null; motherLotCode: string | null };
  places: { placeId: string; code: string; name: string; units: number }[];
}

export interface RelatedBatch {
  batchId: string;
  code: string;
}

export async function readBatchHead({ tx, nurseryId }: ReadContext, batchId: string): Promise<BatchHead | undefined> {
  const [head] = await tx.$queryRaw<BatchHead[]>`
    SELECT b.id::text AS "batchId", b.code, p.id::text AS "plantId", p.code AS "plantCode", p.scientific_name AS "scientificName", p.vernacular_name AS "vernacularName",
           p.root_habit AS "rootHabit", p.dormant_months AS "dormantMonths", p.last_emergence_md AS "lastEmergenceMd", b.method, b.unit,
           b.container_id::text AS "containerId", c.name AS "containerName", c.kind AS "containerKind", c.cells AS "cellsPerTray", b.started_on::text AS "startedOn",
           coalesce((SELECT sum(m.to_units)::int FROM movement m WHERE m.nursery_id = b.nursery_id AND m.entry_id = b.created_entry_id), 0) AS "startedUnits",
           b.seeds_sown AS "seedsSown", b.emerged_units AS "emergedUnits", b.emerged_on::text AS "emergedOn", b.confined_on::text AS "confinedOn",
           b.container_on::text AS "containerOn", b.target_container_id::text AS "targetContainerId", t.name AS "targetContainerName", b.cautious_units AS "cautiousUnits",
           b.usual_units AS "usualUnits", b.protocol_version_id::text AS "protocolVersionId", b.seeds_grams::float8 AS "seedsGrams",
           (SELECT jsonb_build_object('batchId', k.id, 'code', k.code) FROM batch k WHERE k.nursery_id = b.nursery_id AND k.id = b.parent_batch_id) AS parent, b.ready_on::text AS "readyOn", b.plant_by_on::text AS "plantByOn", b.plant_by_state AS "plantByState", b.limit_on::text AS "limitOn",
           b.next_opens_on::text AS "nextOpensOn",
           CASE WHEN u.id IS NULL THEN NULL ELSE jsonb_build_object('basis', u.basis, 'span', u.span, 'standing', u.standing, 'source', u.source, 'note', u.note) END AS rule,
           b.second_winter_on::text AS "secondWinterOn", b.closed_on::text AS "closedOn", b.note, n.notice_days AS "noticeDays",
           jsonb_build_object('sourceId', s.id, 'code', s.code, 'kind', s.kind, 'provenance', s.provenance, 'seedZone', s.seed_zone, 'origin', s.origin,
             'gatheredOn', s.gathered_on, 'gatheredPrecision', s.gathered_precision, 'vendor', s.vendor, 'motherLotId', s.mother_lot_id, 'motherLotCode', l.code) AS source,
           coalesce((SELECT jsonb_agg(jsonb_build_object('placeId', w.id, 'code', w.code, 'name', w.name, 'units', a.units) ORDER BY w.code)
                       FROM account a JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
                      WHERE a.nursery_id = b.nursery_id AND a.batch_id = b.id AND a.units > 0), '[]') AS places
      FROM batch b
      JOIN nursery n ON n.id = b.nursery_id
      JOIN plant p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id
      JOIN source s ON s.nursery_id = b.nursery_id AND s.id = b.source_id
      LEFT JOIN lot l ON l.nursery_id = s.nursery_id AND l.id = s.mother_lot_id
      LEFT JOIN container c ON c.nursery_id = b.nursery_id AND c.id = b.container_id
      LEFT JOIN container t ON t.nursery_id = b.nursery_id AND t.id = b.target_container_id
      LEFT JOIN pot_life_rule u ON u.nursery_id = b.nursery_id AND u.id = b.rule_id
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.id = ${batchId}::uuid`;
  return head;
}

/** One entry of the batch's story, those that were reversed included. */
export interface BatchStoryEntry {
  entryId: string;
  version: number;
  kind: string;
  happenedOn: string;
  recordedAt: Date;
  personName: string | null;
  cause: string | null;
  note: string;
  details: Record<string, unknown>;
  reversesId: string | null;
  /** The entry that took this one back. */
  reversedById: string | null;
  count: { countKind: CountKind; emergedUnits: number; unexplainedUnits: number } | null;
  /** What was seen, of this batch among others. */
  observed: { kind: ObservationKind; result: string | null; amount: number | null } | null;
  /** `drawnFor` and `drawnFrom` are codes of other batches: that packs of this one were drawn for, or that this one was drawn from. */
  movements: { fromPlace: string | null; toPlace: string | null; drawnFor: string | null; drawnFrom: string | null; toLotId: string | null; toLotCode: string | null; outside: string | null; fromUnits: number; toUnits: number }[];
}

export async function readBatchStory({ tx, nurseryId }: ReadContext, batchId: string): Promise<BatchStoryEntry[]> {
  return tx.$queryRaw<BatchStoryEntry[]>`
    WITH own AS (SELECT id FROM account WHERE nursery_id = ${nurseryId}::uuid AND batch_id = ${batchId}::uuid),
    involved AS (
      SELECT v.entry_id FROM movement v JOIN own o ON o.id = v.from_account_id WHERE v.nursery_id = ${nurseryId}::uuid
      UNION SELECT v.entry_id FROM movement v JOIN own o ON o.id = v.to_account_id WHERE v.nursery_id = ${nurseryId}::uuid
      UNION SELECT entry_id FROM entry_subject WHERE nursery_id = ${nurseryId}::uuid AND subject_id = ${batchId}::uuid)
    SELECT e.id::text AS "entryId", e.version::int, e.kind, e.happened_on::text AS "happenedOn", e.recorded_at AS "recordedAt", who.name AS "personName", e.cause, e.note,
           e.details, e.reverses_id::text AS "reversesId",
           (SELECT r.id::text FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id) AS "reversedById",
           (SELECT jsonb_build_object('countKind', c.count_kind, 'emergedUnits', c.emerged_units, 'unexplainedUnits', c.unexplained_units)
              FROM batch_count c WHERE c.nursery_id = e.nursery_id AND c.entry_id = e.id AND c.batch_id = ${batchId}::uuid) AS count,
           (SELECT jsonb_build_object('kind', o.kind, 'result', o.result, 'amount', o.amount) FROM observation o WHERE o.nursery_id = e.nursery_id AND o.entry_id = e.id LIMIT 1) AS observed,
           coalesce((SELECT jsonb_agg(jsonb_build_object('fromPlace', fw.code, 'toPlace', tw.code, 'toLotId', tl.id, 'toLotCode', tl.code, 'drawnFor', tb.code, 'drawnFrom', fb.code,
                       'outside', coalesce(f.outside, t.outside), 'fromUnits', m.from_units, 'toUnits', m.to_units) ORDER BY m.line)
                       FROM movement m
                       JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id
                       JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
                       LEFT JOIN place fw ON fw.nursery_id = f.nursery_id AND fw.id = f.place_id
                       LEFT JOIN place tw ON tw.nursery_id = t.nursery_id AND tw.id = t.place_id
                       LEFT JOIN lot tl ON tl.nursery_id = t.nursery_id AND tl.id = t.lot_id
                       LEFT JOIN batch fb ON fb.nursery_id = f.nursery_id AND fb.id = f.batch_id AND fb.id <> ${batchId}::uuid
                       LEFT JOIN batch tb ON tb.nursery_id = t.nursery_id AND tb.id = t.batch_id AND tb.id <> ${batchId}::uuid
                      WHERE m.nursery_id = e.nursery_id AND m.entry_id = e.id AND (f.batch_id = ${batchId}::uuid OR t.batch_id = ${batchId}::uuid)), '[]') AS movements
      FROM involved i
      JOIN entry e ON e.nursery_id = ${nurseryId}::uuid AND e.id = i.entry_id
      LEFT JOIN nursery_people() who ON who.person_id = e.person_id
     ORDER BY e.happened_on DESC, e.version DESC`;
}

export interface PottedLot {
  lotId: string;
  code: string;
  containerId: string;
  containerName: string;
  pottedOn: string;
  /** Plants potted into it from this batch. */
  pottedUnits: number;
  standingUnits: number;
  plantByOn: string | null;
  closedOn: string | null;
}

export async function readPottedLots({ tx, nurseryId }: ReadContext, batchId: string): Promise<PottedLot[]> {
  return tx.$queryRaw<PottedLot[]>`
    SELECT l.id::text AS "lotId", l.code, l.container_id::text AS "containerId", c.name AS "containerName", l.potted_on::text AS "pottedOn",
           coalesce(potted.units, 0) AS "pottedUnits", coalesce(standing.units, 0) AS "standingUnits", l.plant_by_on::text AS "plantByOn", l.closed_on::text AS "closedOn"
      FROM lineage g
      JOIN lot l ON l.nursery_id = g.nursery_id AND l.id = g.child_lot_id
      JOIN container c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
      LEFT JOIN LATERAL (
        SELECT sum(m.to_units)::int AS units
          FROM account f JOIN movement m ON m.nursery_id = f.nursery_id AND m.from_account_id = f.id
          JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
         WHERE f.nursery_id = g.nursery_id AND f.batch_id = ${batchId}::uuid AND t.lot_id = l.id
           AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = m.nursery_id AND r.reverses_id = m.entry_id)) potted ON true
      LEFT JOIN LATERAL (SELECT sum(a.units)::int AS units FROM account a WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'place') standing ON true
     WHERE g.nursery_id = ${nurseryId}::uuid AND g.parent_id = ${batchId}::uuid
     ORDER BY l.potted_on, l.code`;
}

/** A batch that was drawn from these packs. */
export interface DrawnBatch extends RelatedBatch {
  startedOn: string;
  unit: BatchUnit;
  startedUnits: number;
  /** Packs that were used up by it. */
  packs: number;
  closedOn: string | null;
}

export async function readDrawnBatches({ tx, nurseryId }: ReadContext, batchId: string): Promise<DrawnBatch[]> {
  return tx.$queryRaw<DrawnBatch[]>`
    SELECT b.id::text AS "batchId", b.code, b.started_on::text AS "startedOn", b.unit, b.closed_on::text AS "closedOn", drawn.units AS "startedUnits", drawn.packs
      FROM batch b
      JOIN LATERAL (SELECT coalesce(sum(m.to_units), 0)::int AS units, coalesce(sum(m.from_units), 0)::int AS packs FROM movement m
                     WHERE m.nursery_id = b.nursery_id AND m.entry_id = b.created_entry_id) drawn ON true
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.parent_batch_id = ${batchId}::uuid
       AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = b.nursery_id AND r.reverses_id = b.created_entry_id)
     ORDER BY b.started_on, b.code`;
}

export interface BatchTreatment {
  treatmentId: string;
  entryId: string;
  product: string;
  registrationNo: string | null;
  rate: string | null;
  applicator: string;
  target: string;
  treatedAt: Date;
  reentryAt: Date | null;
}

/** Treatments of the batch, and of the packs it was drawn from before that. */
export async function readBatchTreatments({ tx, nurseryId }: ReadContext, batchId: string): Promise<BatchTreatment[]> {
  return tx.$queryRaw<BatchTreatment[]>`
    SELECT DISTINCT t.id::text AS "treatmentId", t.entry_id::text AS "entryId", t.product, t.registration_no AS "registrationNo", t.rate, t.applicator, t.target,
           t.treated_at AS "treatedAt", t.reentry_at AS "reentryAt"
      FROM treatments_of(${nurseryId}::uuid, ARRAY[${batchId}::uuid]) h JOIN treatment t ON t.nursery_id = ${nurseryId}::uuid AND t.entry_id = h.entry_id
     ORDER BY t.treated_at DESC`;
}

export interface BatchReservation {
  orderId: string;
  orderCode: string;
  clientName: string;
  dueOn: string;
  units: number;
  pinned: boolean;
}

/** For whom units of the batch are held. The tables of orders are read here and never written. */
export async function readBatchReservations({ tx, nurseryId }: ReadContext, batchId: string): Promise<BatchReservation[]> {
  return tx.$queryRaw<BatchReservation[]>`
    SELECT o.id::text AS "orderId", o.code AS "orderCode", k.name AS "clientName", o.due_on::text AS "dueOn", r.units, r.pinned
      FROM reservation r
      JOIN order_line n ON n.nursery_id = r.nursery_id AND n.id = r.line_id
      JOIN garden_order o ON o.nursery_id = n.nursery_id AND o.id = n.order_id
      JOIN client k ON k.nursery_id = o.nursery_id AND k.id = o.client_id
     WHERE r.nursery_id = ${nurseryId}::uuid AND r.batch_id = ${batchId}::uuid
     ORDER BY o.due_on, o.code`;
}
