import type { CountKind, ObservationKind, Readiness } from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql, type Sql } from '../../../db/sql.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

const lastPlace = z.strictObject({ placeId: z.string() });

/** The place a lot last stood at, for one of which nothing is thought to be left. */
export async function lastPlaceOf({ tx, nurseryId }: ReadContext, lotId: string): Promise<string | undefined> {
  const row = await tx.row(lastPlace)`
    SELECT a.place_id::text AS "placeId" FROM account a
      LEFT JOIN LATERAL (SELECT max(e.version) AS version FROM movement m JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id
                          WHERE m.nursery_id = a.nursery_id AND m.from_account_id = a.id) left_at ON true
     WHERE a.nursery_id = ${nurseryId}::uuid AND a.lot_id = ${lotId}::uuid AND a.kind = 'place'
     ORDER BY left_at.version DESC NULLS LAST LIMIT 1`;
  return row?.placeId;
}

/** To be written beside the entry of the count. */
export const countedAs = ({ nurseryId }: CommandContext, lotId: string, countKind: CountKind): Sql =>
  sql`UPDATE lot SET count_kind = ${countKind} WHERE nursery_id = ${nurseryId}::uuid AND id = ${lotId}::uuid`;

export async function setCountKind(context: CommandContext, lotId: string, countKind: CountKind): Promise<void> {
  await context.tx.run(countedAs(context, lotId, countKind));
}

/** To be written beside the entry of the check. */
export function readinessSet(
  { nurseryId, touched }: CommandContext,
  lots: readonly (Readiness & { lotId: string })[],
): Sql {
  for (const { lotId } of lots) touched.lot(lotId);
  return sql`
    UPDATE lot l SET ready_on = r."readyOn", root_checked_on = r."rootCheckedOn"
      FROM jsonb_to_recordset(${JSON.stringify(lots)}::jsonb) AS r ("lotId" uuid, "readyOn" date, "rootCheckedOn" date)
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = r."lotId"`;
}

export async function setReadiness(
  context: CommandContext,
  lots: readonly (Readiness & { lotId: string })[],
): Promise<void> {
  await context.tx.run(readinessSet(context, lots));
}

/** To be written beside the entry of what was seen. */
export const observed = (
  { nurseryId, commandId }: CommandContext,
  { kind, result, amount }: { kind: ObservationKind; result: string | null; amount: number | null },
): Sql => sql`
  INSERT INTO observation (nursery_id, id, entry_id, kind, result, amount)
  VALUES (${nurseryId}::uuid, ${commandId}::uuid, ${commandId}::uuid, ${kind}, ${result}, ${amount}::int)`;
