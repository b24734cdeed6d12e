import { orders } from '@rootclock/contracts';
import { GROWERS, requireSubstitutionRule } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadPlantNames } from '../../lines/store.ts';
import { findTwinRule, insertSubstitutionRule } from '../store.ts';

export const addSubstitutionRule = command({
  name: 'addSubstitutionRule',
  input: orders.addSubstitutionRule,
  roles: GROWERS,
  run: async (context, { ruleId, kind, reach: { plantId = null, genus = null }, penalty, note }) => {
    const rule = requireSubstitutionRule({ id: ruleId, kind, reach: { plantId, genus }, penalty });
    if (plantId !== null) await loadPlantNames(context, [plantId], 'reach.plantId');
    const twin = await findTwinRule(context, rule);
    if (twin !== null) refuse('rule-exists', { ruleId: twin }, 'reach');
    if (!(await insertSubstitutionRule(context, rule, note))) refuse('id-taken', { what: 'rule' }, 'ruleId');
    context.touched.features.add('orders');
    return { ruleId };
  },
});
