/** A rule in words: whom it reaches, and what it says. */
import type { potLife } from '@rootclock/contracts';
import { useMessages } from '../../../messages/index.ts';
import { useSpanWords } from '../../plants/span-words.ts';

export function useRuleWords() {
  const { plants, rules: say } = useMessages();
  const span = useSpanWords();
  const who = (rule: potLife.RuleRow): string => {
    if (rule.lotCode !== null) return say.who.lot(rule.lotCode);
    if (rule.scientificName !== null) return say.who.plant(rule.scientificName);
    if (rule.genus !== null) return say.who.genus(rule.genus);
    return rule.rootHabit === null ? '' : say.who.rootHabit(plants.rootHabits[rule.rootHabit]);
  };
  return {
    who,
    /** With the container, for where that is not said by the heading. */
    whom: (rule: potLife.RuleRow): string =>
      rule.containerName === null ? who(rule) : say.who.inContainer(who(rule), rule.containerName),
    sentence: ({ basis, span: limit, winterCarry }: Pick<potLife.RuleRow, 'basis' | 'span' | 'winterCarry'>): string =>
      [say.sentences[basis](span(limit)), winterCarry && say.carry(winterCarry.maxDays, winterCarry.graceDays)]
        .filter(Boolean)
        .join(' '),
    short: ({ basis, span: limit }: Pick<potLife.RuleRow, 'basis' | 'span'>): string => say.short[basis](span(limit)),
  };
}
