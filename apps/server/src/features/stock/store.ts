import type { BatchState, BatchUnit, PlantByResult, PropagationMethod } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { CommandContext, ReadContext } from '../../trpc/operation.ts';

export interface NewBatch {
  id: string;
  code: string;
  plantId: string;
  sourceId: string;
  method: PropagationMethod;
  unit: BatchUnit;
  containerId: string | null;
  startedOn: string;
  seedsSown: number | null;
  seedsGrams: number | null;
  protocolVersionId: string | null;
  /** The batch of packs its seed is drawn from. */
  parentBatchId: string | null;
  note: string;
}

/** Adds a batch under its start entry; what follows from its entries is written when it is settled. */
export async function insertBatch(
  { tx, nurseryId, touched }: CommandContext,
  entryId: string,
  batch: NewBatch,
): Promise<void> {
  touched.batch(batch.id);
  await tx.run`
    INSERT INTO batch (nursery_id, id, code, plant_id, source_id, created_entry_id, method, unit, container_id, started_on, seeds_sown, seeds_grams, protocol_version_id,
                       parent_batch_id, note)
    VALUES (${nurseryId}::uuid, ${batch.id}::uuid, ${batch.code}, ${batch.plantId}::uuid, ${batch.sourceId}::uuid, ${entryId}::uuid, ${batch.method}, ${batch.unit},
            ${batch.containerId}::uuid, ${batch.startedOn}::date, ${batch.seedsSown}, ${batch.seedsGrams}::numeric, ${batch.protocolVersionId}::uuid,
            ${batch.parentBatchId}::uuid, ${batch.note})`;
}

/** Writes what follows from the entries. Without a forecast among them what was expected of the batch stays as it is. */
export async function storeBatchState(
  { tx, nurseryId }: CommandContext,
  batchId: string,
  state: BatchState,
): Promise<void> {
  const { forecast, stage } = state;
  await tx.run`
    UPDATE batch SET emerged_units = ${state.emergedUnits}, emerged_on = ${state.emergedOn}::date, confined_on = ${state.confinedOn}::date,
           container_on = ${state.containerOn}::date, second_winter_on = ${state.secondWinterOn}::date, closed_on = ${state.closedOn}::date,
           target_container_id = CASE WHEN ${forecast !== null} THEN ${forecast?.targetContainerId ?? null}::uuid ELSE target_container_id END,
           cautious_units = CASE WHEN ${forecast !== null} THEN ${forecast?.cautiousUnits ?? 0} ELSE cautious_units END,
           usual_units = CASE WHEN ${forecast !== null} THEN ${forecast?.usualUnits ?? 0} ELSE usual_units END,
           stage_position = ${stage?.position ?? null}, stage_kind = ${stage?.kind ?? null}, stage_begun_on = ${stage?.begunOn ?? null}::date,
           stage_due_on = ${stage?.dueOn ?? null}::date, stage_late_on = ${stage?.lateOn ?? null}::date,
           ready_on = CASE WHEN ${forecast !== null} THEN ${forecast?.readyOn ?? null}::date ELSE ready_on END
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${batchId}::uuid`;
}

export interface ReckonedClock {
  id: string;
  closedOn: string | null;
  result: PlantByResult;
}

/** Writes what was reckoned of the clocks of lots or batches. */
export async function storeClocks(
  { tx, nurseryId }: CommandContext,
  kind: 'lot' | 'batch',
  clocks: readonly ReckonedClock[],
): Promise<void> {
  if (clocks.length === 0) return;
  const rows = JSON.stringify(
    clocks.map(({ id, closedOn, result }) => ({
      id,
      closedOn,
      plantByOn: result.plantByOn,
      state: result.state,
      limitOn: result.limitOn,
      ruleId: result.ruleId,
      windowId: result.window?.id ?? null,
      nextOpensOn: result.nextOpensOn,
    })),
  );
  if (kind === 'lot') {
    await tx.run`
      UPDATE lot l SET closed_on = r."closedOn", plant_by_on = r."plantByOn", plant_by_state = r.state, limit_on = r."limitOn", rule_id = r."ruleId",
                       window_id = r."windowId", next_opens_on = r."nextOpensOn"
        FROM jsonb_to_recordset(${rows}::jsonb) AS r (id uuid, "closedOn" date, "plantByOn" date, state text, "limitOn" date, "ruleId" uuid, "windowId" uuid, "nextOpensOn" date)
       WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = r.id`;
  } else {
    await tx.run`
      UPDATE batch b SET plant_by_on = r."plantByOn", plant_by_state = r.state, limit_on = r."limitOn", rule_id = r."ruleId",
                         window_id = r."windowId", next_opens_on = r."nextOpensOn"
        FROM jsonb_to_recordset(${rows}::jsonb) AS r (id uuid, "plantByOn" date, state text, "limitOn" date, "ruleId" uuid, "windowId" uuid, "nextOpensOn" date)
       WHERE b.nursery_id = ${nurseryId}::uuid AND b.id = r.id`;
  }
}

const parentage = z.strictObject({ only: z.boolean() });

/** Whether the lot was potted from this batch and from nothing else. */
export async function isPottedFrom({ tx, nurseryId }: ReadContext, lotId: string, batchId: string): Promise<boolean> {
  const row = await tx.row(parentage)`
    SELECT count(*) > 0 AND bool_and(parent_id = ${batchId}::uuid) AS only FROM lineage WHERE nursery_id = ${nurseryId}::uuid AND child_lot_id = ${lotId}::uuid`;
  return row?.only ?? false;
}
