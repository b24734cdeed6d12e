import type { CommandContext } from '../trpc/operation.ts';
import { sql, type Sql } from './sql.ts';

/**
 * Writes settings of the nursery, as long as it is as `when` says. Each setting is one feature's and all stand in the nursery's row,
 * which is written here alone beside the features of people.
 */
export async function setInNursery(
  { tx, nurseryId }: CommandContext,
  settings: Sql,
  when: Sql = sql`true`,
): Promise<void> {
  await tx.run`UPDATE nursery SET ${settings} WHERE id = ${nurseryId}::uuid AND ${when}`;
}
