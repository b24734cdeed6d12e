import { orders } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadSubstitutionRule, markSubstitutionRuleRetired } from '../store.ts';

export const retireSubstitutionRule = command({
  name: 'retireSubstitutionRule',
  input: orders.retireSubstitutionRule,
  roles: GROWERS,
  run: async (context, { ruleId }) => {
    await loadSubstitutionRule(context, ruleId);
    await markSubstitutionRuleRetired(context, ruleId);
    context.touched.features.add('orders');
    return { ruleId };
  },
});
