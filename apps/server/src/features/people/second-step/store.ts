import * as z from 'zod/mini';
import type { Tx } from '../../../db/pool.ts';

// Reached through the database's own functions only, as passwords are.

export const secondStep = z.strictObject({
  secret: z.string(),
  confirmedAt: z.nullable(z.date()),
  lastStep: z.number(),
  codesLeft: z.number(),
});
export type SecondStep = z.infer<typeof secondStep>;

export async function loadSecondStep(tx: Tx, personId: string): Promise<SecondStep | null> {
  const row = await tx.row(secondStep)`
    SELECT secret, confirmed_at AS "confirmedAt", last_step::float8 AS "lastStep", codes_left AS "codesLeft" FROM second_step_of(${personId}::uuid)`;
  return row ?? null;
}

const beginning = z.strictObject({ begun: z.boolean() });

/** False where a second step is on already. */
export async function insertSecondStep(tx: Tx, personId: string, secret: string): Promise<boolean> {
  const row = await tx.row(beginning)`SELECT begin_second_step(${personId}::uuid, ${secret}) AS begun`;
  return row?.begun ?? false;
}

const confirmation = z.strictObject({ confirmed: z.boolean() });

/** False where it was begun anew or confirmed meanwhile. */
export async function confirmSecondStep(
  tx: Tx,
  personId: string,
  { secret, step, codeHashes, at }: { secret: string; step: number; codeHashes: Buffer[]; at: Date },
): Promise<boolean> {
  const row = await tx.row(
    confirmation,
  )`SELECT confirm_second_step(${personId}::uuid, ${secret}, ${step}::bigint, ${codeHashes}::bytea[], ${at}) AS confirmed`;
  return row?.confirmed ?? false;
}

const takenStep = z.strictObject({ taken: z.boolean() });

export async function takeStep(tx: Tx, personId: string, step: number): Promise<boolean> {
  const row = await tx.row(takenStep)`SELECT use_second_step(${personId}::uuid, ${step}::bigint) AS taken`;
  return row?.taken ?? false;
}

export async function takeRecoveryCode(tx: Tx, personId: string, hash: Buffer, at: Date): Promise<boolean> {
  const row = await tx.row(takenStep)`SELECT use_recovery_code(${personId}::uuid, ${hash}, ${at}) AS taken`;
  return row?.taken ?? false;
}

export async function deleteSecondStep(tx: Tx, personId: string): Promise<void> {
  await tx.run`SELECT end_second_step(${personId}::uuid)::text`;
}

const personAsked = z.strictObject({ personId: z.string() });

/** Who of the nursery is asked for codes. */
export async function loadSecondSteps(tx: Tx): Promise<string[]> {
  const rows = await tx.rows(personAsked)`SELECT person_id::text AS "personId" FROM nursery_second_steps() ORDER BY 1`;
  return rows.map(({ personId }) => personId);
}

const removal = z.strictObject({ removed: z.boolean() });

/** False when the person is not of this nursery. */
export async function removeStepOf(tx: Tx, personId: string): Promise<boolean> {
  const row = await tx.row(removal)`SELECT remove_second_step(${personId}::uuid) AS removed`;
  return row?.removed ?? false;
}
