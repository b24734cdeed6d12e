import * as z from 'zod/mini';
import type { CommandContext } from '../trpc/operation.ts';
import type { Tx } from './pool.ts';
import { sql, type Sql } from './sql.ts';

/**
 * Writes settings of the nursery, as long as it is as `when` says; answers whether it was. Each setting is one feature's and all stand in the nursery's row,
 * which is written here alone beside the features of people.
 */
export async function setInNursery(
  { tx, nurseryId }: CommandContext,
  settings: Sql,
  when: Sql = sql`true`,
): Promise<boolean> {
  return (await tx.run`UPDATE nursery SET ${settings} WHERE id = ${nurseryId}::uuid AND ${when}`) > 0;
}

const keyRow = z.strictObject({ id: z.string() });

/** Holds all writes of a nursery back for as long as the transaction lasts. False where there is no such nursery here. */
export async function lockNursery(tx: Tx, nurseryId: string): Promise<boolean> {
  await tx.run`SELECT set_config('app.nursery', ${nurseryId}, true)`;
  const row = await tx.row(keyRow)`
    SELECT id::text FROM nursery WHERE id = ${nurseryId}::uuid FOR UPDATE`;
  return row !== undefined;
}
