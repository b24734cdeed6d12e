import type { Tx } from '../../../db/pool.ts';

// Reached through the database's own functions only, as passwords are.

export interface SecondStep {
  secret: string;
  confirmedAt: Date | null;
  lastStep: number;
  codesLeft: number;
}

export async function loadSecondStep(tx: Tx, personId: string): Promise<SecondStep | null> {
  const [row] = await tx.$queryRaw<SecondStep[]>`
    SELECT secret, confirmed_at AS "confirmedAt", last_step::float8 AS "lastStep", codes_left AS "codesLeft" FROM second_step_of(${personId}::uuid)`;
  return row ?? null;
}

/** False where a second step is on already. */
export async function insertSecondStep(tx: Tx, personId: string, secret: string): Promise<boolean> {
  const [row] = await tx.$queryRaw<
    { begun: boolean }[]
  >`SELECT begin_second_step(${personId}::uuid, ${secret}) AS begun`;
  return row?.begun ?? false;
}

/** False where it was begun anew or confirmed meanwhile. */
export async function confirmSecondStep(
  tx: Tx,
  personId: string,
  { secret, step, codeHashes, at }: { secret: string; step: number; codeHashes: Buffer[]; at: Date },
): Promise<boolean> {
  const [row] = await tx.$queryRaw<
    { confirmed: boolean }[]
  >`SELECT confirm_second_step(${personId}::uuid, ${secret}, ${step}::bigint, ${codeHashes}::bytea[], ${at}) AS confirmed`;
  return row?.confirmed ?? false;
}

export async function takeStep(tx: Tx, personId: string, step: number): Promise<boolean> {
  const [row] = await tx.$queryRaw<
    { taken: boolean }[]
  >`SELECT use_second_step(${personId}::uuid, ${step}::bigint) AS taken`;
  return row?.taken ?? false;
}

export async function takeRecoveryCode(tx: Tx, personId: string, hash: Buffer, at: Date): Promise<boolean> {
  const [row] = await tx.$queryRaw<
    { taken: boolean }[]
  >`SELECT use_recovery_code(${personId}::uuid, ${hash}, ${at}) AS taken`;
  return row?.taken ?? false;
}

export async function deleteSecondStep(tx: Tx, personId: string): Promise<void> {
  await tx.$queryRaw`SELECT end_second_step(${personId}::uuid)::text`;
}

/** Who of the nursery is asked for codes. */
export async function loadSecondSteps(tx: Tx): Promise<string[]> {
  const rows = await tx.$queryRaw<
    { personId: string }[]
  >`SELECT person_id::text AS "personId" FROM nursery_second_steps() ORDER BY 1`;
  return rows.map(({ personId }) => personId);
}

/** False when the person is not of this nursery. */
export async function removeStepOf(tx: Tx, personId: string): Promise<boolean> {
  const [row] = await tx.$queryRaw<{ removed: boolean }[]>`SELECT remove_second_step(${personId}::uuid) AS removed`;
  return row?.removed ?? false;
}
