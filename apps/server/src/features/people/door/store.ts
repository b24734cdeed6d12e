import * as z from 'zod/mini';
import type { Tx } from '../../../db/pool.ts';

// Guesses, sessions and devices stand outside row security, like the people they are of: the database's own functions are the only way to them.

export const guess = z.strictObject({
  /** 0 where the guess may be tried; it is counted as failed by then. */
  waitSeconds: z.number(),
  /** What it was counted by. */
  subjects: z.array(z.string()),
  personId: z.nullable(z.string()),
  personName: z.nullable(z.string()),
  passwordHash: z.nullable(z.string()),
  nurseryId: z.nullable(z.string()),
  role: z.nullable(z.string()),
});
export type Guess = z.infer<typeof guess>;

export async function beginGuess(
  tx: Tx,
  { email, network, deviceKey, at }: { email: string; network: string; deviceKey: Buffer | null; at: Date },
): Promise<Guess> {
  const row = await tx.row(guess)`
    SELECT wait_seconds AS "waitSeconds", subjects, person_id AS "personId", person_name AS "personName", password_hash AS "passwordHash", nursery_id AS "nurseryId", role
      FROM begin_guess(${email}, ${network}, ${deviceKey}::bytea, ${at})`;
  if (!row) throw new Error('a guess was not counted');
  return row;
}

export async function forgiveGuess(tx: Tx, subjects: string[], isRight: boolean): Promise<void> {
  await tx.run`SELECT forgive_guess(${subjects}, ${isRight})::text`;
}

export interface NewSession {
  hash: Buffer;
  /** The session that the browser had until now, whoever's it was. */
  beforeHash: Buffer | null;
  deviceKey: Buffer;
  nurseryId: string;
  personId: string;
  agent: string;
  openedAt: Date;
  expiresAt: Date;
  deviceExpiresAt: Date;
}

export async function insertSession(tx: Tx, session: NewSession): Promise<void> {
  await tx.run`
    SELECT open_session(${session.hash}, ${session.beforeHash}::bytea, ${session.deviceKey}, ${session.nurseryId}::uuid, ${session.personId}::uuid, ${session.agent},
                        ${session.openedAt}, ${session.expiresAt}, ${session.deviceExpiresAt})::text`;
}

const tokenHolderRow = z.strictObject({
  personId: z.string(),
  personName: z.string(),
  email: z.string(),
  nurseryId: z.string(),
  role: z.string(),
  isSeen: z.boolean(),
});

export async function findTokenHolder(tx: Tx, hash: Buffer, kind: string, at: Date) {
  const row = await tx.row(tokenHolderRow)`
    SELECT person_id AS "personId", person_name AS "personName", email, nursery_id AS "nurseryId", role, is_seen AS "isSeen" FROM token_holder(${hash}, ${kind}, ${at})`;
  return row ?? null;
}

export async function noteSeen(tx: Tx, hash: Buffer, at: Date): Promise<void> {
  await tx.run`SELECT note_session_seen(${hash}, ${at})::text`;
}

export async function revokeToken(tx: Tx, hash: Buffer, at: Date): Promise<void> {
  await tx.run`SELECT revoke_token(${hash}, ${at})::text`;
}

export const sessionFacts = z.strictObject({
  id: z.string(),
  agent: z.string(),
  openedAt: z.date(),
  seenAt: z.date(),
  here: z.boolean(),
});
export type SessionFacts = z.infer<typeof sessionFacts>;

export async function loadSessions(tx: Tx, personId: string, asking: Buffer | null, at: Date): Promise<SessionFacts[]> {
  return tx.rows(sessionFacts)`
    SELECT id::text, agent, opened_at AS "openedAt", seen_at AS "seenAt", here FROM person_sessions(${personId}::uuid, ${asking}::bytea, ${at})
     ORDER BY here DESC, seen_at DESC, opened_at DESC, id`;
}

/** Ends one session of a person, or for null all but the one that asks. */
export async function endSessions(
  tx: Tx,
  personId: string,
  sessionId: string | null,
  asking: Buffer | null,
  at: Date,
): Promise<void> {
  await tx.run`SELECT end_sessions(${personId}::uuid, ${sessionId}::uuid, ${asking}::bytea, ${at})::text`;
}

/** Deletes tokens and counts of guesses that open and hold back nothing any more. */
export async function purgeDoor(tx: Tx, at: Date): Promise<void> {
  await tx.run`SELECT purge_door(${at})::text`;
}
