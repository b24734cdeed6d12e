import { potLife } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { clocksChanged } from '../../../plants/store.ts';
import { loadRule, markRuleRetired } from '../store.ts';

/** A rule that no longer counts: what it bound falls to the next one, or to none. */
export const retireRule = command({
  name: 'retireRule',
  input: potLife.retireRule,
  roles: GROWERS,
  run: async (context, { ruleId }) => {
    await loadRule(context, ruleId);
    await markRuleRetired(context, ruleId);
    context.touched.features.add('pot-life');
    await clocksChanged(context);
    return { ruleId };
  },
});
