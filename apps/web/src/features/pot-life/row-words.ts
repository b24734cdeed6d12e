import { useFormat } from '../../lib/format/index.ts';
import { useMessages } from '../../messages/index.ts';
import type { BoardRow } from './board-data.ts';

/** The rule that binds a row of the board, as a sentence with its days; null where none does. */
export function useRowSentence(): (row: BoardRow) => string | null {
  const { words } = useMessages().lots;
  const { dates } = useFormat();
  return ({ rule, limitOn, clockOn }) => {
    if (!rule || !limitOn) return null;
    const { reach } = rule;
    const reached = reach.lot
      ? words.rule.thisLot
      : (reach.scientificName ?? reach.genus ?? (reach.rootHabit ? words.rootHabits[reach.rootHabit] : ''));
    const who = reach.containerName ? words.rule.inContainer(reached, reach.containerName) : reached;
    if (rule.basis === 'no-winter' || rule.span === null) return words.rule.noWinter(who, dates.long(limitOn));
    return words.rule.limited(
      who,
      words.span(rule.span),
      clockOn ? words.ruleSince[rule.basis](dates.long(clockOn)) : '',
      dates.long(limitOn),
    );
  };
}
