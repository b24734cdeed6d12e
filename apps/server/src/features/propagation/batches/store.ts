import { BATCH_UNITS, CONTAINER_KINDS, PROPAGATION_METHODS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { found } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

/** What commands need to know of a batch before they touch it. */
export const batchFacts = z.strictObject({
  id: z.string(),
  code: z.string(),
  plantId: z.string(),
  plantCode: z.string(),
  scientificName: z.string(),
  dormantMonths: z.array(z.number()),
  lastEmergenceMd: z.nullable(z.string()),
  sourceId: z.string(),
  sourceCode: z.string(),
  method: z.enum(PROPAGATION_METHODS),
  unit: z.enum(BATCH_UNITS),
  containerId: z.nullable(z.string()),
  containerKind: z.nullable(z.enum(CONTAINER_KINDS)),
  startedOn: z.string(),
  protocolVersionId: z.nullable(z.string()),
  secondWinterOn: z.nullable(z.string()),
  targetContainerId: z.nullable(z.string()),
  cautiousUnits: z.number(),
  readyOn: z.nullable(z.string()),
  closedOn: z.nullable(z.string()),
  balances: z.array(z.strictObject({ placeId: z.string(), units: z.number(), placeCode: z.string() })),
});
export type BatchFacts = z.infer<typeof batchFacts>;

/** Loads a batch; an id that is not this nursery's answers as not found. */
export async function loadBatch({ tx, nurseryId }: ReadContext, id: string, field = 'batchId'): Promise<BatchFacts> {
  const batch = await tx.row(batchFacts)`
    SELECT b.id::text, b.code, b.plant_id::text AS "plantId", p.code AS "plantCode", p.scientific_name AS "scientificName", p.dormant_months AS "dormantMonths",
           p.last_emergence_md AS "lastEmergenceMd", b.source_id::text AS "sourceId", s.code AS "sourceCode", b.method, b.unit, b.container_id::text AS "containerId", c.kind AS "containerKind",
           b.started_on::text AS "startedOn", b.target_container_id::text AS "targetContainerId", b.cautious_units AS "cautiousUnits", b.ready_on::text AS "readyOn",
           b.closed_on::text AS "closedOn", b.protocol_version_id::text AS "protocolVersionId", b.second_winter_on::text AS "secondWinterOn",
           coalesce((SELECT jsonb_agg(jsonb_build_object('placeId', a.place_id, 'placeCode', w.code, 'units', a.units) ORDER BY w.code)
                       FROM units_standing a JOIN place_named w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
                      WHERE a.nursery_id = b.nursery_id AND a.batch_id = b.id AND a.units > 0), '[]') AS balances
      FROM batch_told b JOIN plant_named p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id
                   JOIN source_named s ON s.nursery_id = b.nursery_id AND s.id = b.source_id
                   LEFT JOIN container_named c ON c.nursery_id = b.nursery_id AND c.id = b.container_id
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.id = ${id}::uuid`;
  return found(batch, 'batch', field);
}

export interface NewCount {
  batchId: string;
  countedOn: string;
  countKind: string;
  emergedUnits: number;
  unexplainedUnits: number;
}

/** Adds the count of an entry; one entry makes one count, so the entry's id is the count's. */
export async function insertCount({ tx, nurseryId }: CommandContext, entryId: string, count: NewCount): Promise<void> {
  await tx.run`
    INSERT INTO batch_count (nursery_id, id, batch_id, entry_id, counted_on, count_kind, emerged_units, unexplained_units)
    VALUES (${nurseryId}::uuid, ${entryId}::uuid, ${count.batchId}::uuid, ${entryId}::uuid, ${count.countedOn}::date, ${count.countKind}, ${count.emergedUnits}, ${count.unexplainedUnits})`;
}

export const plantFacts = z.strictObject({
  id: z.string(),
  code: z.string(),
  scientificName: z.string(),
});
export type PlantFacts = z.infer<typeof plantFacts>;

export async function loadPlant({ tx, nurseryId }: ReadContext, id: string): Promise<PlantFacts> {
  const plant = await tx.row(plantFacts)`
    SELECT id::text, code, scientific_name AS "scientificName" FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid AND retired_at IS NULL`;
  return found(plant, 'plant', 'plantId');
}

const plantNameRow = z.strictObject({ name: z.string() });

/** The name of a plant that may be retired by now. */
export async function loadPlantName({ tx, nurseryId }: ReadContext, id: string): Promise<string> {
  const plant = await tx.row(
    plantNameRow,
  )`SELECT scientific_name AS name FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  return found(plant, 'plant', 'plantId').name;
}

export const sourceFacts = z.strictObject({
  id: z.string(),
  code: z.string(),
  plantId: z.string(),
  plantName: z.string(),
  gatheredOn: z.nullable(z.string()),
  isRetired: z.boolean(),
});
export type SourceFacts = z.infer<typeof sourceFacts>;

export async function loadSource({ tx, nurseryId }: ReadContext, id: string): Promise<SourceFacts> {
  const source = await tx.row(sourceFacts)`
    SELECT s.id::text, s.code, s.plant_id::text AS "plantId", p.scientific_name AS "plantName", s.gathered_on::text AS "gatheredOn", s.retired_at IS NOT NULL AS "isRetired"
      FROM source_named s JOIN plant_named p ON p.nursery_id = s.nursery_id AND p.id = s.plant_id
     WHERE s.nursery_id = ${nurseryId}::uuid AND s.id = ${id}::uuid`;
  return found(source, 'source', 'sourceId');
}

export const containerFacts = z.strictObject({
  id: z.string(),
  name: z.string(),
  kind: z.enum(CONTAINER_KINDS),
  cells: z.nullable(z.number()),
});
export type ContainerFacts = z.infer<typeof containerFacts>;

export async function loadContainer(
  { tx, nurseryId }: ReadContext,
  id: string,
  field: string,
): Promise<ContainerFacts> {
  const container = await tx.row(containerFacts)`
    SELECT id::text, name, kind, cells FROM container_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid AND retired_at IS NULL`;
  return found(container, 'container', field);
}

export const placeFacts = z.strictObject({
  id: z.string(),
  code: z.string(),
});
export type PlaceFacts = z.infer<typeof placeFacts>;

export async function loadPlace({ tx, nurseryId }: ReadContext, id: string, field: string): Promise<PlaceFacts> {
  const place = await tx.row(
    placeFacts,
  )`SELECT id::text, code FROM place_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid AND retired_at IS NULL`;
  return found(place, 'place', field);
}
