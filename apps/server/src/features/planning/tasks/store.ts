import * as z from 'zod/mini';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export const tick = z.strictObject({
  id: z.string(),
  doneOn: z.string(),
  isStanding: z.boolean(),
});
export type Tick = z.infer<typeof tick>;

/** The last tick of a task, standing or taken back. */
export async function loadTick({ tx, nurseryId }: ReadContext, key: string): Promise<Tick | null> {
  const row = await tx.row(tick)`
    SELECT id::text, done_on::text AS "doneOn", taken_back_at IS NULL AS "isStanding" FROM task_tick
     WHERE nursery_id = ${nurseryId}::uuid AND task_key = ${key} ORDER BY taken_back_at IS NULL DESC, taken_back_at DESC LIMIT 1`;
  return row ?? null;
}

/** One command ticks one task, so the command's id is the tick's. */
export async function insertTick(
  { tx, nurseryId, personId, commandId, touched }: CommandContext,
  key: string,
  doneOn: string,
  note: string,
): Promise<void> {
  touched.features.add('planning');
  await tx.run`
    INSERT INTO task_tick (nursery_id, id, task_key, done_on, person_id, note)
    VALUES (${nurseryId}::uuid, ${commandId}::uuid, ${key}, ${doneOn}::date, ${personId}::uuid, ${note})`;
}

export async function takeTickBack({ tx, nurseryId, now, touched }: CommandContext, id: string): Promise<void> {
  touched.features.add('planning');
  await tx.run`UPDATE task_tick SET taken_back_at = ${now} WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}
