import type { potLife } from '@rootclock/contracts';
import { type PotLifeRule, requireRule } from '@rootclock/domain';
import type * as z from 'zod/mini';

/** A rule as it would be added. Throws InputError for a reach or a span that makes no rule. */
export function draftOf({ ruleId, basis, span, reach, winterCarry }: z.output<typeof potLife.addRule>): PotLifeRule {
  return requireRule({ id: ruleId, basis, span, reach: definedReach(reach), winterCarry });
}

/** A rule with other terms. Throws InputError when they do not fit its basis. */
export function editedRule(
  rule: PotLifeRule,
  { span, winterCarry }: Pick<z.output<typeof potLife.editRule>, 'span' | 'winterCarry'>,
): PotLifeRule {
  return requireRule({ id: rule.id, basis: rule.basis, reach: rule.reach, span, winterCarry });
}

function definedReach({
  lotId = null,
  plantId = null,
  containerId = null,
  genus = null,
  rootHabit = null,
}: z.output<typeof potLife.addRule>['reach']) {
  return { lotId, plantId, containerId, genus, rootHabit };
}
