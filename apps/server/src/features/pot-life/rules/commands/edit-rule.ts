import { potLife } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../../trpc/editing.ts';
import { clocksChanged } from '../../../plants/store.ts';
import { editedRule } from '../draft.ts';
import { loadRule, ruleEdits, updateRule } from '../store.ts';

export const editRule = editing({
  name: 'editRule',
  input: potLife.editRule,
  roles: GROWERS,
  edits: ruleEdits,
  run: async (context, input) => {
    const before = await loadRule(context, input.ruleId);
    const rule = editedRule(before, input);
    // A note alone leaves the rule on the word it stood on.
    const isOwn =
      rule.span !== before.span ||
      rule.winterCarry?.maxDays !== before.winterCarry?.maxDays ||
      rule.winterCarry?.graceDays !== before.winterCarry?.graceDays;
    await updateRule(context, rule, { note: input.note, isOwn });
    context.touched.features.add('pot-life');
    await clocksChanged(context);
    return { ruleId: rule.id };
  },
});
