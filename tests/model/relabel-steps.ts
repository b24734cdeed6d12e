import { at, type Ledger, type Move } from './ledger.ts';
import { chosen, type Plan, type Planner } from './step.ts';
import { isShort, lotAndPlace, type OfLot } from './stock-steps.ts';
import { TODAY } from './world.ts';

const entry = { happenedOn: TODAY };

/** Plants under a new label, in the pot they had or in a big one, as many as before or each cut in so many. */
function relabel(
  ledger: Ledger,
  choice: OfLot & { to: number },
  kind: 'split' | 'pot-up' | 'convert',
  times = 1,
): Plan | null {
  const found = lotAndPlace(ledger, choice);
  if (!found) return null;
  const { lot, placeId, here } = found;
  const lotId = ledger.id('lot');
  const toPlaceId = chosen(ledger.placeIds, choice.to) ?? '';
  const { units } = choice;
  const item = kind === 'split' ? lot.item : 'big';
  const body = { lotId: lot.id, placeId, ...entry };
  return {
    refusals: isShort(units, here),
    send: ({ procedures: { stock }, sent, containerIds }, commandId) => {
      const into = { lotId, placeId: toPlaceId, units: units * times, containerId: containerIds[item], readyOn: TODAY };
      if (kind === 'split')
        return stock.splitLot(sent({ ...body, into: [{ lotId, placeId: toPlaceId, units }] }, commandId));
      if (kind === 'pot-up') return stock.potUpLot(sent({ ...body, into: [into] }, commandId));
      return stock.convertLot(
        sent(
          { ...entry, conversion: 'divide' as const, from: [{ lotId: lot.id, placeId, units }], into: [into] },
          commandId,
        ),
      );
    },
    apply: (model, id) => {
      model.addLot(lotId, item);
      model.post({
        id,
        kind,
        moves: [{ from: at(lot.id, placeId), to: at(lotId, toPlaceId), units, toUnits: units * times }],
      });
      model.inheritHolds(id, [lot.id], lotId);
    },
    concerns: [lot.id, lotId],
    ...(item === lot.item ? { carries: [lot.id, lotId] } : {}),
  };
}

export const split: Planner<OfLot & { to: number }> = (ledger, choice) => relabel(ledger, choice, 'split');
export const potUp: Planner<OfLot & { to: number }> = (ledger, choice) => relabel(ledger, choice, 'pot-up');
export const divide: Planner<OfLot & { to: number }> = (ledger, choice) => relabel(ledger, choice, 'convert', 3);

export const merge: Planner<{ lot: number; other: number; to: number | null }> = (ledger, { lot, other, to }) => {
  const lots = [...ledger.lots.values()];
  const first = chosen(lots, lot);
  const second = chosen(
    lots.filter(({ id }) => id !== first?.id),
    other,
  );
  if (!first || !second) return null;
  const lotId = ledger.id('lot');
  const into = to === null ? null : (chosen(ledger.placeIds, to) ?? null);
  const parents = [first, second];
  const moves: Move[] = parents.flatMap(({ id }) =>
    ledger
      .standing(id)
      .map((placeId) => ({ from: at(id, placeId), to: at(lotId, into ?? placeId), units: ledger.of(at(id, placeId)) })),
  );
  return {
    refusals: [
      ...(first.item === second.item ? [] : ['lots-differ']),
      ...(parents.some(({ id }) => ledger.standing(id).length === 0) ? ['nothing-there'] : []),
    ],
    send: ({ procedures, sent }, commandId) =>
      procedures.stock.mergeLots(
        sent({ ...entry, lotIds: parents.map(({ id }) => id), into: { lotId, placeId: into } }, commandId),
      ),
    apply: (model, id) => {
      model.addLot(lotId, first.item);
      model.post({ id, kind: 'merge', moves });
      model.inheritHolds(
        id,
        parents.map((parent) => parent.id),
        lotId,
      );
    },
    concerns: [first.id, second.id, lotId],
    carries: [first.id, second.id, lotId],
  };
};
