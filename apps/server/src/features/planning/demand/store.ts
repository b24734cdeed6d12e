import * as z from 'zod/mini';
import { columns, editedRow } from '../../../db/editions.ts';
import { sql } from '../../../db/sql.ts';
import { found } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export interface DemandDraft {
  id: string;
  plantId: string;
  containerId: string;
  wantedOn: string;
  units: number;
  unitValueMinor: number | null;
  note: string;
}

const demandRow = z.strictObject({ wantedOn: z.string(), isWithdrawn: z.boolean() });

/** The day it is wanted and whether it was withdrawn; an id that is not this nursery's answers as not found. */
export async function loadDemand(
  { tx, nurseryId }: ReadContext,
  demandId: string,
): Promise<{ wantedOn: string; isWithdrawn: boolean }> {
  const row = await tx.row(demandRow)`
    SELECT wanted_on::text AS "wantedOn", withdrawn_at IS NOT NULL AS "isWithdrawn" FROM expected_demand WHERE nursery_id = ${nurseryId}::uuid AND id = ${demandId}::uuid`;
  return found(row, 'expected demand', 'demandId');
}

const requireItemRow = z.strictObject({ id: z.string() });

export async function requireItem({ tx, nurseryId }: ReadContext, plantId: string, containerId: string): Promise<void> {
  const plant = await tx.row(
    requireItemRow,
  )`SELECT id FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${plantId}::uuid AND retired_at IS NULL`;
  found(plant, 'plant', 'plantId');
  const container = await tx.row(
    requireItemRow,
  )`SELECT id FROM container_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${containerId}::uuid AND retired_at IS NULL`;
  found(container, 'container', 'containerId');
}

export async function insertDemand({ tx, nurseryId }: CommandContext, demand: DemandDraft): Promise<void> {
  await tx.run`
    INSERT INTO expected_demand (nursery_id, id, plant_id, container_id, wanted_on, units, unit_value_minor, note)
    VALUES (${nurseryId}::uuid, ${demand.id}::uuid, ${demand.plantId}::uuid, ${demand.containerId}::uuid, ${demand.wantedOn}::date, ${demand.units}, ${demand.unitValueMinor}, ${demand.note})`;
}

export async function updateDemand({ tx, nurseryId }: CommandContext, demand: DemandDraft): Promise<void> {
  await tx.run`
    UPDATE expected_demand SET plant_id = ${demand.plantId}::uuid, container_id = ${demand.containerId}::uuid, wanted_on = ${demand.wantedOn}::date, units = ${demand.units},
           unit_value_minor = ${demand.unitValueMinor}, note = ${demand.note}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${demand.id}::uuid`;
}

export async function setWithdrawn({ tx, nurseryId, now }: CommandContext, demandId: string): Promise<void> {
  await tx.run`UPDATE expected_demand SET withdrawn_at = ${now} WHERE nursery_id = ${nurseryId}::uuid AND id = ${demandId}::uuid`;
}

export const demandEdits = editedRow<{ demandId: string }>({
  table: 'expected_demand',
  row: ({ demandId }) => sql`r.id = ${demandId}::uuid`,
  fields: { ...columns('plantId', 'containerId', 'units', 'unitValueMinor', 'note'), wanted: 'r.wanted_on' },
});
