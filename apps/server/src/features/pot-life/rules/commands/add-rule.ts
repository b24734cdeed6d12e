import { potLife } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { clocksChanged } from '../../../plants/store.ts';
import { draftOf } from '../draft.ts';
import { findTwin, insertRule, requireReached } from '../store.ts';

export const addRule = command({
  name: 'addRule',
  input: potLife.addRule,
  roles: GROWERS,
  run: async (context, input) => {
    const rule = draftOf(input);
    await requireReached(context, rule.reach);
    const twin = await findTwin(context, rule);
    if (twin) refuse('rule-exists', { ruleId: twin }, 'reach');
    if (!(await insertRule(context, rule, input.note))) refuse('id-taken', { what: 'rule' }, 'ruleId');
    context.touched.features.add('pot-life');
    await clocksChanged(context);
    return { ruleId: rule.id };
  },
});
