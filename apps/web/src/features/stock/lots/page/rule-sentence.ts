import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import type { Lot } from '../lot-data.ts';

/** The rule that binds a lot, as a sentence with its days; null where none does. */
export function useRuleSentence(): (lot: Lot) => string | null {
  const { words } = useMessages().lots;
  const { dates } = useFormat();
  return ({ rule, limitOn, confinedOn, containerOn }) => {
    if (!rule || !limitOn) return null;
    const reached = rule.lotId
      ? words.rule.thisLot
      : (rule.plant ?? rule.genus ?? (rule.rootHabit ? words.rootHabits[rule.rootHabit] : ''));
    const who = rule.container ? words.rule.inContainer(reached, rule.container) : reached;
    if (rule.basis === 'no-winter' || rule.span === null) return words.rule.noWinter(who, dates.long(limitOn));
    const since = rule.basis === 'confined' ? confinedOn : containerOn;
    return words.rule.limited(
      who,
      words.span(rule.span),
      since ? words.ruleSince[rule.basis](dates.long(since)) : '',
      dates.long(limitOn),
    );
  };
}
