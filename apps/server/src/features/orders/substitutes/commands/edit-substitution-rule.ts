import { orders } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../../trpc/editing.ts';
import { loadSubstitutionRule, substitutionRuleEdits, updateSubstitutionRule } from '../store.ts';

/** What lines took by the rule before keeps the penalty that it had then. */
export const editSubstitutionRule = editing({
  name: 'editSubstitutionRule',
  input: orders.editSubstitutionRule,
  roles: GROWERS,
  edits: substitutionRuleEdits,
  run: async (context, input) => {
    await loadSubstitutionRule(context, input.ruleId);
    await updateSubstitutionRule(context, input);
    context.touched.features.add('orders');
    return { ruleId: input.ruleId };
  },
});
