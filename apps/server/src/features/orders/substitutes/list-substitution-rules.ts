import { orders } from '@rootclock/contracts';
import { EVERYONE, untoldTraits } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { readRules, readSubstitutePlants } from './reads.ts';

/** The rules with how many plants each reaches, and of how many a rule of habit cannot speak. */
export const listSubstitutionRules = query({
  name: 'listSubstitutionRules',
  input: orders.listSubstitutionRules,
  roles: EVERYONE,
  read: async (context): Promise<orders.SubstitutionRuleRow[]> => {
    const plants = await readSubstitutePlants(context);
    return (await readRules(context)).map((rule) => {
      const reached = plants.filter(
        ({ plantId, genus }) =>
          (rule.plantId === null || rule.plantId === plantId) &&
          (rule.genus === null || rule.genus.toLowerCase() === genus.toLowerCase()),
      );
      return {
        ...rule,
        plants: reached.length,
        untoldPlants: rule.kind === 'same-habit' ? reached.filter((plant) => untoldTraits(plant).length > 0).length : 0,
      };
    });
  },
});
