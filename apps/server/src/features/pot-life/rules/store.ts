import { POT_LIFE_BASES, ROOT_HABITS, type PotLifeReach, type PotLifeRule } from '@rootclock/domain';
import * as z from 'zod/mini';
import { columns, editedRow } from '../../../db/editions.ts';
import { sql } from '../../../db/sql.ts';
import { found, refuse } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export const storedRule = z.strictObject({
  id: z.string(),
  basis: z.enum(POT_LIFE_BASES),
  span: z.nullable(z.string()),
  reach: z.strictObject({
    lotId: z.optional(z.nullable(z.string())),
    plantId: z.optional(z.nullable(z.string())),
    containerId: z.optional(z.nullable(z.string())),
    genus: z.optional(z.nullable(z.string())),
    rootHabit: z.optional(z.nullable(z.enum(ROOT_HABITS))),
  }),
  winterCarry: z.optional(z.nullable(z.strictObject({ maxDays: z.number(), graceDays: z.number() }))),
  note: z.string(),
  isRetired: z.boolean(),
});
export type StoredRule = z.infer<typeof storedRule>;

/** A rule by id; one that is not this nursery's answers as not found, a retired one as retired. */
export async function loadRule({ tx, nurseryId }: ReadContext, id: string): Promise<StoredRule> {
  const row = await tx.row(storedRule)`
    SELECT id::text, basis, span, note, retired_at IS NOT NULL AS "isRetired",
           jsonb_build_object('lotId', lot_id, 'plantId', plant_id, 'containerId', container_id, 'genus', genus, 'rootHabit', root_habit) AS reach,
           CASE WHEN carry_max_days IS NULL THEN NULL ELSE jsonb_build_object('maxDays', carry_max_days, 'graceDays', carry_grace_days) END AS "winterCarry"
      FROM pot_life_rule WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  const rule = found(row, 'rule', 'ruleId');
  if (rule.isRetired) refuse('rule-retired', undefined, 'ruleId');
  return rule;
}

const twinRow = z.strictObject({ id: z.string() });

/** The rule of the same basis for the same plants, which a second one would contradict. */
export async function findTwin(
  { tx, nurseryId }: ReadContext,
  { basis, reach }: Pick<PotLifeRule, 'basis' | 'reach'>,
): Promise<string | null> {
  const row = await tx.row(twinRow)`
    SELECT id::text FROM pot_life_rule
     WHERE nursery_id = ${nurseryId}::uuid AND retired_at IS NULL AND basis = ${basis}
       AND lot_id IS NOT DISTINCT FROM ${reach.lotId ?? null}::uuid AND plant_id IS NOT DISTINCT FROM ${reach.plantId ?? null}::uuid
       AND container_id IS NOT DISTINCT FROM ${reach.containerId ?? null}::uuid AND lower(genus) IS NOT DISTINCT FROM lower(${reach.genus ?? null}::text)
       AND root_habit IS NOT DISTINCT FROM ${reach.rootHabit ?? null}::text`;
  return row?.id ?? null;
}

const requireReachedRow = z.strictObject({ lot: z.boolean(), plant: z.boolean(), container: z.boolean() });

/** Looks up what a rule reaches, so that an id that is not this nursery's answers as not found. */
export async function requireReached(
  { tx, nurseryId }: ReadContext,
  { lotId, plantId, containerId }: PotLifeReach,
): Promise<void> {
  const row = await tx.row(requireReachedRow)`
    SELECT EXISTS (SELECT 1 FROM lot_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${lotId ?? null}::uuid) AS lot,
           EXISTS (SELECT 1 FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${plantId ?? null}::uuid) AS plant,
           EXISTS (SELECT 1 FROM container_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${containerId ?? null}::uuid) AS container`;
  if (lotId && !row?.lot) refuse('not-found', { what: 'lot' }, 'reach.lotId');
  if (plantId && !row?.plant) refuse('not-found', { what: 'plant' }, 'reach.plantId');
  if (containerId && !row?.container) refuse('not-found', { what: 'container' }, 'reach.containerId');
}

/** Adds a rule. Answers false when its id is taken. */
export async function insertRule(
  { tx, nurseryId }: CommandContext,
  { id, basis, span, reach, winterCarry }: PotLifeRule,
  note: string,
): Promise<boolean> {
  const added = await tx.run`
    INSERT INTO pot_life_rule (nursery_id, id, basis, span, lot_id, plant_id, container_id, genus, root_habit, carry_max_days, carry_grace_days, standing, note)
    VALUES (${nurseryId}::uuid, ${id}::uuid, ${basis}, ${span}, ${reach.lotId ?? null}::uuid, ${reach.plantId ?? null}::uuid, ${reach.containerId ?? null}::uuid, ${reach.genus ?? null},
            ${reach.rootHabit ?? null}, ${winterCarry?.maxDays ?? null}::int, ${winterCarry?.graceDays ?? null}::int, 'own setting', ${note})
    ON CONFLICT DO NOTHING`;
  return added === 1;
}

/** Changes a rule's terms; from then on it is the nursery's own, whoever said it before. */
export async function updateRule(
  { tx, nurseryId }: CommandContext,
  { id, span, winterCarry }: PotLifeRule,
  { note, isOwn }: { note: string; isOwn: boolean },
): Promise<void> {
  await tx.run`
    UPDATE pot_life_rule SET span = ${span}, carry_max_days = ${winterCarry?.maxDays ?? null}::int, carry_grace_days = ${winterCarry?.graceDays ?? null}::int, note = ${note},
           standing = CASE WHEN ${isOwn} THEN 'own setting' ELSE standing END, source = CASE WHEN ${isOwn} THEN NULL ELSE source END
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}

export async function markRuleRetired({ tx, nurseryId, now }: CommandContext, id: string): Promise<void> {
  await tx.run`UPDATE pot_life_rule SET retired_at = ${now} WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}

export const ruleEdits = editedRow<{ ruleId: string }>({
  table: 'pot_life_rule',
  row: ({ ruleId }) => sql`r.id = ${ruleId}::uuid`,
  fields: {
    ...columns('span', 'note'),
    winterCarry:
      "CASE WHEN r.carry_max_days IS NOT NULL THEN jsonb_build_object('maxDays', r.carry_max_days, 'graceDays', r.carry_grace_days) END",
  },
});
