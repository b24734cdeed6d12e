import { gardens } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadSubstitutionRule, updateSubstitutionRule } from '../store.ts';

/** What lines took by the rule before keeps the penalty that it had then. */
export const editSubstitutionRule = command({
  name: 'editSubstitutionRule',
  input: gardens.editSubstitutionRule,
  roles: GROWERS,
  run: async (context, input) => {
    await loadSubstitutionRule(context, input.ruleId);
    await updateSubstitutionRule(context, input);
    context.touched.features.add('gardens');
    return { ruleId: input.ruleId };
  },
});
