import { SUBSTITUTION_KINDS, type SubstitutionRule } from '@rootclock/domain';
import * as z from 'zod/mini';
import { columns, editedRow } from '../../../db/editions.ts';
import { sql } from '../../../db/sql.ts';
import { found, refuse } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export const storedSubstitutionRule = z.strictObject({
  id: z.string(),
  kind: z.enum(SUBSTITUTION_KINDS),
  reach: z.strictObject({ plantId: z.optional(z.nullable(z.string())), genus: z.optional(z.nullable(z.string())) }),
  penalty: z.number(),
  note: z.string(),
  isRetired: z.boolean(),
});
export type StoredSubstitutionRule = z.infer<typeof storedSubstitutionRule>;

/** A rule by id; one that is not this nursery's answers as not found, a retired one as retired. */
export async function loadSubstitutionRule(
  { tx, nurseryId }: ReadContext,
  id: string,
): Promise<StoredSubstitutionRule> {
  const row = await tx.row(storedSubstitutionRule)`
    SELECT id::text, kind, jsonb_build_object('plantId', plant_id, 'genus', genus) AS reach, penalty, note, retired_on IS NOT NULL AS "isRetired"
      FROM substitution_rule WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  const rule = found(row, 'rule', 'ruleId');
  if (rule.isRetired) refuse('rule-retired', undefined, 'ruleId');
  return rule;
}

const twinRule = z.strictObject({ id: z.string() });

/** The rule of the same kind for the same plants, which a second one would contradict. */
export async function findTwinRule(
  { tx, nurseryId }: ReadContext,
  { kind, reach }: SubstitutionRule,
): Promise<string | null> {
  const row = await tx.row(twinRule)`
    SELECT id::text FROM substitution_rule
     WHERE nursery_id = ${nurseryId}::uuid AND retired_on IS NULL AND kind = ${kind} AND plant_id IS NOT DISTINCT FROM ${reach.plantId ?? null}::uuid
       AND lower(genus) IS NOT DISTINCT FROM lower(${reach.genus ?? null}::text)`;
  return row?.id ?? null;
}

/** Adds a rule. Answers false when its id is taken. */
export async function insertSubstitutionRule(
  { tx, nurseryId }: CommandContext,
  { id, kind, reach, penalty }: SubstitutionRule,
  note: string,
): Promise<boolean> {
  const added = await tx.run`
    INSERT INTO substitution_rule (nursery_id, id, kind, plant_id, genus, penalty, note)
    VALUES (${nurseryId}::uuid, ${id}::uuid, ${kind}, ${reach.plantId ?? null}::uuid, ${reach.genus ?? null}, ${penalty}, ${note})
    ON CONFLICT (nursery_id, id) DO NOTHING`;
  return added === 1;
}

export async function updateSubstitutionRule(
  { tx, nurseryId }: CommandContext,
  { ruleId, penalty, note }: { ruleId: string; penalty: number; note: string },
): Promise<void> {
  await tx.run`UPDATE substitution_rule SET penalty = ${penalty}, note = ${note} WHERE nursery_id = ${nurseryId}::uuid AND id = ${ruleId}::uuid`;
}

export async function markSubstitutionRuleRetired(
  { tx, nurseryId, today }: CommandContext,
  ruleId: string,
): Promise<void> {
  await tx.run`UPDATE substitution_rule SET retired_on = ${today}::date WHERE nursery_id = ${nurseryId}::uuid AND id = ${ruleId}::uuid`;
}

export const substitutionRuleEdits = editedRow<{ ruleId: string }>({
  table: 'substitution_rule',
  row: ({ ruleId }) => sql`r.id = ${ruleId}::uuid`,
  fields: columns('penalty', 'note'),
});
