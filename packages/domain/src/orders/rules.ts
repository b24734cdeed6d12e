import { InputError, requireOneOf, requireText, requireWhole } from '../kernel/input.ts';

/**
 * What may stand in for a plant by a rule. `another-size`: the same plant in another pot. `same-genus`: another plant of its genus that is
 * native to the region of the site. `same-habit`: another plant of its height class, for its light, in bloom in its season.
 */
export const SUBSTITUTION_KINDS = ['another-size', 'same-genus', 'same-habit'] as const;
export type SubstitutionKind = (typeof SUBSTITUTION_KINDS)[number];

/** Whom a rule reaches: one plant, all of a genus, or with neither every plant that is asked for. */
export interface SubstitutionReach {
  plantId?: string | null;
  genus?: string | null;
}

export interface SubstitutionRule {
  id: string;
  kind: SubstitutionKind;
  reach: SubstitutionReach;
  /** 1 to 100, as of an alternative that is written by hand: the smaller goes first. */
  penalty: number;
}

export const MOST_PENALTY = 100;

/** Returns the rule when it can be applied. Throws InputError naming the part that is wrong. */
export function requireSubstitutionRule(rule: SubstitutionRule): SubstitutionRule {
  requireText('id', rule.id);
  requireOneOf('kind', rule.kind, SUBSTITUTION_KINDS);
  requireWhole('penalty', rule.penalty, 1, MOST_PENALTY);
  if (rule.reach.plantId != null && rule.reach.genus != null)
    throw new InputError('reach', 'must be one plant, a genus or neither, not both');
  return rule;
}

/** How particular a reach is: 2 for one plant, 1 for a genus, 0 for all; null when it does not reach the plant. */
function reachOf({ reach }: SubstitutionRule, plant: { plantId: string; genus: string }): number | null {
  if (reach.plantId != null) return reach.plantId === plant.plantId ? 2 : null;
  if (reach.genus != null) return reach.genus.toLowerCase() === plant.genus.toLowerCase() ? 1 : null;
  return 0;
}

/**
 * Of the rules that reach a plant, the most particular of each kind, in the order of SUBSTITUTION_KINDS; of two equally particular ones the
 * smaller penalty, then the smaller id, so that the order of reading never matters. Throws InputError for a rule that cannot be applied.
 */
export function rulesReaching(
  rules: readonly SubstitutionRule[],
  plant: { plantId: string; genus: string },
): SubstitutionRule[] {
  const reaching = rules.flatMap((rule) => {
    const reach = reachOf(requireSubstitutionRule(rule), plant);
    return reach === null ? [] : [{ rule, reach }];
  });
  reaching.sort((a, b) => b.reach - a.reach || a.rule.penalty - b.rule.penalty || (a.rule.id < b.rule.id ? -1 : 1));
  return SUBSTITUTION_KINDS.flatMap((kind) => reaching.find(({ rule }) => rule.kind === kind)?.rule ?? []);
}
