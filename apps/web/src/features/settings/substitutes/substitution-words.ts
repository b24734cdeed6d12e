/** A rule in words: whom it reaches, and its name among the others. */
import type { orders } from '@rootclock/contracts';
import { useMessages } from '../../../messages/index.ts';

export function useSubstitutionWords() {
  const { substitutes: say } = useMessages();
  const who = ({ scientificName, genus }: orders.SubstitutionRuleRow): string => {
    if (scientificName !== null) return say.who.plant(scientificName);
    return genus === null ? say.who.all : say.who.genus(genus);
  };
  return { who, name: (rule: orders.SubstitutionRuleRow): string => `${who(rule)}, ${say.kinds[rule.kind]}` };
}
