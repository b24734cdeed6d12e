import { CONTAINER_KINDS, type IntakeForm } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export const intakeContainer = z.strictObject({
  id: z.string(),
  kind: z.enum(CONTAINER_KINDS),
});
export type IntakeContainer = z.infer<typeof intakeContainer>;
export const intakePlace = z.strictObject({
  id: z.string(),
  code: z.string(),
  kind: z.string(),
  retired: z.boolean(),
  closedUntilAt: z.nullable(z.string()),
  closedReason: z.nullable(z.string()),
});
export type IntakePlace = z.infer<typeof intakePlace>;

/** Containers and places by id; what is not this nursery's is left out, so that each row can say which field it came from. */
export async function loadIntakeGround(
  { tx, nurseryId }: ReadContext,
  containerIds: readonly string[],
  placeIds: readonly string[],
): Promise<{ containers: Map<string, IntakeContainer>; places: Map<string, IntakePlace> }> {
  const containers = await tx.rows(intakeContainer)`
    SELECT id::text, kind FROM container_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...containerIds]}::uuid[])`;
  const places = await tx.rows(intakePlace)`
    SELECT id::text, code, kind, retired_at IS NOT NULL AS retired, closed_reason AS "closedReason",
           to_char(closed_until_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS "closedUntilAt"
      FROM place WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...placeIds]}::uuid[])`;
  return {
    containers: new Map(containers.map((row) => [row.id, row])),
    places: new Map(places.map((row) => [row.id, row])),
  };
}

const takenLot = z.strictObject({ id: z.string() });

/** Which of these lot ids are in use already. */
export async function loadTakenLots({ tx, nurseryId }: ReadContext, lotIds: readonly string[]): Promise<Set<string>> {
  const rows = await tx.rows(
    takenLot,
  )`SELECT id::text FROM lot WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...lotIds]}::uuid[])`;
  return new Set(rows.map((row) => row.id));
}

export interface IntakeRow {
  lotId: string;
  kind: 'opening' | 'bought';
  form: IntakeForm;
  arrivedOn: string;
  arrivedPrecision: string;
  invoicedUnits: number | null;
  receivedUnits: number;
  sownOn: string | null;
}

export async function insertIntakes(
  { tx, nurseryId }: CommandContext,
  entryId: string,
  rows: readonly IntakeRow[],
): Promise<void> {
  await tx.run`
    INSERT INTO intake (nursery_id, lot_id, entry_id, kind, form, arrived_on, arrived_precision, invoiced_units, received_units, sown_on)
    SELECT ${nurseryId}::uuid, r."lotId", ${entryId}::uuid, r.kind, r.form, r."arrivedOn", r."arrivedPrecision", r."invoicedUnits", r."receivedUnits", r."sownOn"
      FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS r ("lotId" uuid, kind text, form text, "arrivedOn" date, "arrivedPrecision" text,
           "invoicedUnits" int, "receivedUnits" int, "sownOn" date)`;
}
