import * as z from 'zod/mini';
import type { ReadContext } from '../../../../trpc/operation.ts';

/** How careful the nursery plans, and how much its own counts weigh against a protocol's figure. */
export const forecastSettings = z.strictObject({
  planConfidence: z.number(),
  priorWeight: z.number(),
  evidenceLimit: z.number(),
});
export type ForecastSettings = z.infer<typeof forecastSettings>;

export async function readForecastSettings({ tx, nurseryId }: ReadContext): Promise<ForecastSettings> {
  const row = await tx.row(forecastSettings)`
    SELECT plan_confidence::float8 AS "planConfidence", prior_weight AS "priorWeight", evidence_limit AS "evidenceLimit" FROM nursery_settings WHERE id = ${nurseryId}::uuid`;
  if (!row) throw new Error('the nursery of a running read has no row');
  return row;
}

const batchStart = z.strictObject({ startedUnits: z.number(), seedsSown: z.nullable(z.number()) });

/** Units that the batch began with. */
export async function readStartedUnits(
  { tx, nurseryId }: ReadContext,
  batchId: string,
): Promise<{ startedUnits: number; seedsSown: number | null }> {
  const row = await tx.row(batchStart)`
    SELECT coalesce((SELECT sum(m.to_units)::int FROM movement_told m WHERE m.nursery_id = b.nursery_id AND m.entry_id = b.created_entry_id), 0) AS "startedUnits", b.seeds_sown AS "seedsSown"
      FROM batch_told b WHERE b.nursery_id = ${nurseryId}::uuid AND b.id = ${batchId}::uuid`;
  return row ?? { startedUnits: 0, seedsSown: null };
}
