import { randomUUID } from 'node:crypto';
import { SEED_MOVEMENT_KINDS, type SeedMovementKind } from '@rootclock/domain';
import * as z from 'zod/mini';
import { raised } from '../../../db/editions.ts';
import { sql, type Sql } from '../../../db/sql.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

/** Movements that count: nobody took them back, and they are no taking back themselves. */
const standing = sql`m.reverses_id IS NULL AND NOT EXISTS (SELECT 1 FROM seed_movement r WHERE r.nursery_id = m.nursery_id AND r.reverses_id = m.id)`;

/** Seed that comes into a store, or with grams below zero out of it. */
export interface SeedMovementDraft {
  sourceId: string;
  kind: SeedMovementKind;
  grams: number;
  happenedOn: string;
  batchId?: string;
  entryId?: string;
  reversesId?: string;
  note?: string;
}

/** Books seed and answers the ids of what was booked, in its order; the database keeps the stores in the same statement and refuses to take one below nothing. */
export async function insertSeedMovements(
  context: CommandContext,
  movements: readonly SeedMovementDraft[],
): Promise<string[]> {
  if (movements.length === 0) return [];
  context.touched.features.add('sources');
  const rows = movements.map((movement) => ({ ...movement, id: randomUUID() }));
  await context.tx.run`
    INSERT INTO seed_movement (nursery_id, id, source_id, kind, grams, happened_on, recorded_at, person_id, command_id, batch_id, entry_id, reverses_id, note)
    SELECT ${context.nurseryId}::uuid, m.id, m."sourceId", m.kind, m.grams, m."happenedOn", ${context.now}, nullif(${context.personId}, '')::uuid, ${context.commandId}::uuid,
           m."batchId", m."entryId", m."reversesId", coalesce(m.note, '')
      FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS m (id uuid, "sourceId" uuid, kind text, grams numeric, "happenedOn" date, "batchId" uuid, "entryId" uuid,
           "reversesId" uuid, note text)`;
  return rows.map(({ id }) => id);
}

/** Adds clean seed that came in to what a source is said to have given, or takes it off again; the first of it begins its storage. */
export async function addCleaned(
  context: CommandContext,
  sourceId: string,
  grams: number,
  storedOn: string | null = null,
): Promise<void> {
  const { tx, nurseryId } = context;
  await tx.run`
    UPDATE source SET cleaned_grams = nullif(greatest(coalesce(cleaned_grams, 0) + ${grams}::float8::numeric, 0), 0), stored_on = coalesce(stored_on, ${storedOn}::date),
           ${raised(context)}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${sourceId}::uuid`;
}

/** A source's store as commands need it: null grams where nothing was ever weighed into it. */
export const seedStore = z.strictObject({
  grams: z.nullable(z.number()),
  /** The last day on which something that stands was booked. */
  lastOn: z.nullable(z.string()),
});
export type SeedStore = z.infer<typeof seedStore>;

const storeOfSource = z.strictObject({ ...seedStore.shape, sourceId: z.string() });

export async function loadSeedStores(
  { tx, nurseryId }: ReadContext,
  sourceIds: readonly string[],
): Promise<Map<string, SeedStore>> {
  const rows = await tx.rows(storeOfSource)`
    SELECT t.source_id::text AS "sourceId", t.grams::float8 AS grams,
           (SELECT max(m.happened_on)::text FROM seed_movement m WHERE m.nursery_id = t.nursery_id AND m.source_id = t.source_id AND ${standing}) AS "lastOn"
      FROM seed_store t WHERE t.nursery_id = ${nurseryId}::uuid AND t.source_id = ANY (${[...sourceIds]}::uuid[])`;
  return new Map(rows.map(({ sourceId, ...store }) => [sourceId, store]));
}

export const storedMovement = z.strictObject({
  id: z.string(),
  sourceId: z.string(),
  kind: z.enum(SEED_MOVEMENT_KINDS),
  grams: z.number(),
  happenedOn: z.string(),
  commandId: z.string(),
  entryId: z.nullable(z.string()),
  personId: z.nullable(z.string()),
  reversed: z.boolean(),
});
export type StoredMovement = z.infer<typeof storedMovement>;

async function loadMovements({ tx }: ReadContext, where: Sql): Promise<StoredMovement[]> {
  return tx.rows(storedMovement)`
    SELECT m.id::text, m.source_id::text AS "sourceId", m.kind, m.grams::float8 AS grams, m.happened_on::text AS "happenedOn", m.command_id::text AS "commandId",
           m.entry_id::text AS "entryId", m.person_id::text AS "personId", NOT (${standing}) AS reversed
      FROM seed_movement m WHERE ${where} ORDER BY m.recorded_at, m.id`;
}

/** What an entry used and nobody brought back. */
export const loadUsesOfEntry = (context: ReadContext, entryId: string): Promise<StoredMovement[]> =>
  loadMovements(
    context,
    sql`m.nursery_id = ${context.nurseryId}::uuid AND m.entry_id = ${entryId}::uuid AND ${standing}`,
  );

export async function loadMovement(context: ReadContext, id: string): Promise<StoredMovement | undefined> {
  const [movement] = await loadMovements(
    context,
    sql`m.nursery_id = ${context.nurseryId}::uuid AND m.id = ${id}::uuid`,
  );
  return movement;
}

/** All that one command booked and nobody took back: the parts of a blend and the blend. */
export const loadMovementsOfCommand = (context: ReadContext, commandId: string): Promise<StoredMovement[]> =>
  loadMovements(
    context,
    sql`m.nursery_id = ${context.nurseryId}::uuid AND m.command_id = ${commandId}::uuid AND ${standing}`,
  );
