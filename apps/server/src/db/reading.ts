import * as z from 'zod/mini';
import { databaseFailure } from './failure.ts';
import type { Database, Tx } from './pool.ts';

const READ_ONLY_SQL_TRANSACTION = '25006';

const begunRead = z.strictObject({ zone: z.nullable(z.string()) });

/**
 * A transaction that only reads, within one nursery: everything in it is of one moment, and the database refuses what writes. `work` also gets
 * the nursery's zone, which is null where there is no such nursery. Read-only work at this level never fails for what others write.
 */
export async function readOnce<Answer>(
  database: Database,
  nurseryId: string,
  work: (tx: Tx, zone: string | null) => Promise<Answer>,
): Promise<Answer> {
  try {
    return await database.snapshot(async (tx) => {
      const begun = await tx.row(begunRead)`SELECT begin_read(${nurseryId}::uuid) AS zone`;
      return work(tx, begun?.zone ?? null);
    });
  } catch (error) {
    // Elsewhere this state means a standby and is worth asking again; here it is a slip of ours that fails each time.
    if (databaseFailure(error)?.sqlState === READ_ONLY_SQL_TRANSACTION)
      throw new Error('a read tried to write', { cause: error });
    throw error;
  }
}
