import { STANDINGS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { columns, editedSettings } from '../../../db/editions.ts';
import { setInNursery } from '../../../db/nursery-row.ts';
import { sql } from '../../../db/sql.ts';
import { found } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

/** How a nursery weighs its own counts against what protocols say, and how careful its plans are. */
export const learningSettings = z.strictObject({
  edition: z.number(),
  priorWeight: z.number(),
  evidenceLimit: z.number(),
  planConfidence: z.number(),
  winterSurvival: z.number(),
  winterStanding: z.enum(STANDINGS),
});
export type LearningSettings = z.infer<typeof learningSettings>;

export async function loadLearningSettings({ tx, nurseryId }: ReadContext): Promise<LearningSettings> {
  const row = await tx.row(learningSettings)`
    SELECT edition, prior_weight AS "priorWeight", evidence_limit AS "evidenceLimit", plan_confidence::float8 AS "planConfidence", winter_survival::float8 AS "winterSurvival",
           winter_survival_standing AS "winterStanding" FROM nursery_settings WHERE id = ${nurseryId}::uuid`;
  return found(row, 'nursery');
}

/** A winter survival that is set to another figure is the nursery's own from then on. */
export async function storeLearningSettings(
  context: CommandContext,
  { priorWeight, evidenceLimit, planConfidence, winterSurvival }: Omit<LearningSettings, 'edition' | 'winterStanding'>,
): Promise<void> {
  await setInNursery(
    context,
    sql`prior_weight = ${priorWeight}, evidence_limit = ${evidenceLimit}, plan_confidence = ${planConfidence}::float8,
           winter_survival_standing = CASE WHEN winter_survival = ${winterSurvival}::float8::numeric(7, 6) THEN winter_survival_standing ELSE 'own setting' END,
           winter_survival = ${winterSurvival}::float8`,
  );
}

const versionRow = z.strictObject({ version: z.number() });

/** The number of the nursery's last command. */
export async function loadVersion({ tx, nurseryId }: ReadContext): Promise<number> {
  const row = await tx.row(versionRow)`SELECT version::int FROM nursery_settings WHERE id = ${nurseryId}::uuid`;
  return found(row, 'nursery').version;
}

export const learningEdits = editedSettings({
  ...columns('priorWeight', 'evidenceLimit'),
  planConfidencePercent: 'r.plan_confidence * 100',
  winterSurvivalPercent: 'r.winter_survival * 100',
});

/** Writes down anew what the entries of these batches tell. */
export async function keepBatchEvidence({ tx, nurseryId }: CommandContext, batchIds: readonly string[]): Promise<void> {
  if (batchIds.length > 0) await tx.run`SELECT keep_batch_evidence(${nurseryId}::uuid, ${[...batchIds]}::uuid[])`;
}
