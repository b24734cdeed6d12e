import { at, type Move } from './ledger.ts';
import { lotAndPlace, type OfLot } from './stock-steps.ts';
import type { Planner } from './step.ts';
import { TODAY } from './world.ts';

export interface OfSpring extends Pick<OfLot, 'lot' | 'place'> {
  dead: number;
  notUp: number;
  /** More or fewer than stand there; none makes the numbers sum. */
  off: number;
  book: boolean;
}

/** The dead leave, what is not up stays, and numbers that do not sum are booked only where somebody says so. */
export const countSpring: Planner<OfSpring> = (ledger, choice) => {
  const found = lotAndPlace(ledger, choice);
  if (!found) return null;
  const { lot, placeId, here } = found;
  const counted = Math.max(0, here + choice.off);
  const deadUnits = Math.min(choice.dead, counted);
  const notUpUnits = Math.min(choice.notUp, counted - deadUnits);
  const account = at(lot.id, placeId);
  const moves: Move[] = [
    ...(counted > here ? [{ from: null, to: account, units: counted - here }] : []),
    ...(counted < here ? [{ from: account, to: null, units: here - counted }] : []),
    ...(deadUnits > 0 ? [{ from: account, to: null, units: deadUnits }] : []),
  ];
  return {
    refusals: counted !== here && !choice.book ? ['spring-count-differs'] : [],
    send: ({ procedures, sent }, commandId) =>
      procedures.stock.countSpring(
        sent(
          {
            counts: [{ lotId: lot.id, placeId, upUnits: counted - deadUnits - notUpUnits, deadUnits, notUpUnits }],
            happenedOn: TODAY,
            bookDifferences: choice.book,
            confirmed: true,
          },
          commandId,
        ),
      ),
    apply: (model, id) => model.post({ id, kind: 'count', moves }),
    concerns: [lot.id],
  };
};
