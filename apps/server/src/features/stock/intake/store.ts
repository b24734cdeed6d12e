import type { ContainerKind, IntakeForm } from '@rootclock/domain';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export interface IntakeContainer {
  id: string;
  kind: ContainerKind;
}
export interface IntakePlace {
  id: string;
  code: string;
  kind: string;
  retired: boolean;
  closedUntilAt: string | null;
  closedReason: string | null;
}

/** Containers and places by id; what is not this nursery's is left out, so that each row can say which field it came from. */
export async function loadIntakeGround(
  { tx, nurseryId }: ReadContext,
  containerIds: readonly string[],
  placeIds: readonly string[],
): Promise<{ containers: Map<string, IntakeContainer>; places: Map<string, IntakePlace> }> {
  const containers = await tx.$queryRaw<IntakeContainer[]>`
    SELECT id::text, kind FROM container WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...containerIds]}::uuid[])`;
  const places = await tx.$queryRaw<IntakePlace[]>`
    SELECT id::text, code, kind, retired_at IS NOT NULL AS retired, closed_reason AS "closedReason",
           to_char(closed_until_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS "closedUntilAt"
      FROM place WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...placeIds]}::uuid[])`;
  return {
    containers: new Map(containers.map((row) => [row.id, row])),
    places: new Map(places.map((row) => [row.id, row])),
  };
}

/** Which of these lot ids are in use already. */
export async function loadTakenLots({ tx, nurseryId }: ReadContext, lotIds: readonly string[]): Promise<Set<string>> {
  const rows = await tx.$queryRaw<
    { id: string }[]
  >`SELECT id::text FROM lot WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...lotIds]}::uuid[])`;
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
  await tx.$executeRaw`
    INSERT INTO intake (nursery_id, lot_id, entry_id, kind, form, arrived_on, arrived_precision, invoiced_units, received_units, sown_on)
    SELECT ${nurseryId}::uuid, r."lotId", ${entryId}::uuid, r.kind, r.form, r."arrivedOn", r."arrivedPrecision", r."invoicedUnits", r."receivedUnits", r."sownOn"
      FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS r ("lotId" uuid, kind text, form text, "arrivedOn" date, "arrivedPrecision" text,
           "invoicedUnits" int, "receivedUnits" int, "sownOn" date)`;
}
