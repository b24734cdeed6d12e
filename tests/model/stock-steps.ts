import { at, type Ledger, type Move } from './ledger.ts';
import { chosen, type Plan, type Planner } from './step.ts';
import { TODAY } from './world.ts';

export interface OfLot {
  lot: number;
  place: number;
  units: number;
}

const entry = { happenedOn: TODAY };

/** A place for a lot, and how much of it is there: places where it stands come first. */
export function placeOf(ledger: Ledger, lotId: string, place: number) {
  const standing = ledger.standing(lotId);
  const placeId = chosen([...standing, ...ledger.placeIds.filter((id) => !standing.includes(id))], place) ?? '';
  return { placeId, here: ledger.of(at(lotId, placeId)) };
}

export function lotAndPlace(ledger: Ledger, { lot: number, place }: Pick<OfLot, 'lot' | 'place'>) {
  const lot = chosen([...ledger.lots.values()], number);
  return lot ? { lot, ...placeOf(ledger, lot.id, place) } : null;
}

const isShort = (units: number, here: number) => (units > here ? ['not-enough-units'] : []);

export const receive: Planner<{ place: number; units: number; quarantine: boolean }> = (ledger, { place, units, quarantine }) => {
  const lotId = ledger.id('lot');
  const placeId = chosen(ledger.placeIds, place) ?? '';
  return {
    refusals: [],
    send: ({ procedures, sent, plantId, containerIds, sourceId }, commandId) => procedures.stock.receiveBought(sent({
      ...entry, quarantine, lines: [{ lotId, plantId, form: 'pots' as const, containerId: containerIds.small, placeId, receivedUnits: units, sourceId, rootChecked: true }],
    }, commandId)),
    apply: (model, id) => {
      model.addLot(lotId, 'small');
      if (quarantine) model.lot(lotId).holds.set('quarantine', id);
      model.post({ id, kind: 'receive', moves: [{ from: null, to: at(lotId, placeId), units }] });
    },
    concerns: [lotId],
  };
};

/** Plants under a new label, in the pot they had or in a big one, as many as before or each cut in so many. */
function relabel(ledger: Ledger, choice: OfLot & { to: number }, kind: 'split' | 'pot-up' | 'convert', times = 1): Plan | null {
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
      if (kind === 'split') return stock.splitLot(sent({ ...body, into: [{ lotId, placeId: toPlaceId, units }] }, commandId));
      if (kind === 'pot-up') return stock.potUpLot(sent({ ...body, into: [into] }, commandId));
      return stock.convertLot(sent({ ...entry, conversion: 'divide' as const, from: [{ lotId: lot.id, placeId, units }], into: [into] }, commandId));
    },
    apply: (model, id) => {
      model.addLot(lotId, item);
      model.post({ id, kind, moves: [{ from: at(lot.id, placeId), to: at(lotId, toPlaceId), units, toUnits: units * times }] });
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
  const second = chosen(lots.filter(({ id }) => id !== first?.id), other);
  if (!first || !second) return null;
  const lotId = ledger.id('lot');
  const into = to === null ? null : (chosen(ledger.placeIds, to) ?? null);
  const parents = [first, second];
  const moves: Move[] = parents.flatMap(({ id }) => ledger.standing(id).map((placeId) => ({ from: at(id, placeId), to: at(lotId, into ?? placeId), units: ledger.of(at(id, placeId)) })));
  return {
    refusals: [...(first.item === second.item ? [] : ['lots-differ']), ...(parents.some(({ id }) => ledger.standing(id).length === 0) ? ['nothing-there'] : [])],
    send: ({ procedures, sent }, commandId) => procedures.stock.mergeLots(sent({ ...entry, lotIds: parents.map(({ id }) => id), into: { lotId, placeId: into } }, commandId)),
    apply: (model, id) => {
      model.addLot(lotId, first.item);
      model.post({ id, kind: 'merge', moves });
      model.inheritHolds(id, parents.map((parent) => parent.id), lotId);
    },
    concerns: [first.id, second.id, lotId],
    carries: [first.id, second.id, lotId],
  };
};

export const move: Planner<OfLot & { to: number }> = (ledger, choice) => {
  const found = lotAndPlace(ledger, choice);
  if (!found) return null;
  const { lot, placeId, here } = found;
  const { units } = choice;
  const toPlaceId = chosen(ledger.placeIds, choice.to) ?? '';
  return {
    refusals: toPlaceId === placeId || here === 0 ? ['nothing-there'] : isShort(units, here),
    send: ({ procedures, sent }, commandId) => procedures.stock.moveLot(sent({ ...entry, lotId: lot.id, placeId, units, toPlaceId }, commandId)),
    apply: (model, id) => model.post({ id, kind: 'move', moves: [{ from: at(lot.id, placeId), to: at(lot.id, toPlaceId), units }] }),
    concerns: [lot.id],
  };
};

export const lose: Planner<OfLot> = (ledger, choice) => {
  const found = lotAndPlace(ledger, choice);
  if (!found) return null;
  const { lot, placeId, here } = found;
  const { units } = choice;
  return {
    refusals: isShort(units, here),
    send: ({ procedures, sent }, commandId) => procedures.stock.loseFromLot(sent({ ...entry, lotId: lot.id, placeId, units, cause: 'drought' as const }, commandId)),
    apply: (model, id) => model.post({ id, kind: 'lose', moves: [{ from: at(lot.id, placeId), to: null, units }] }),
    concerns: [lot.id],
  };
};

export const sell: Planner<OfLot> = (ledger, choice) => {
  const found = lotAndPlace(ledger, choice);
  if (!found) return null;
  const { lot, placeId, here } = found;
  const { units } = choice;
  return {
    refusals: [...(lot.holds.size > 0 ? ['lot-held'] : []), ...isShort(units, here)],
    send: ({ procedures, sent }, commandId) => procedures.stock.sellFromLot(sent({ ...entry, lotId: lot.id, placeId, units }, commandId)),
    apply: (model, id) => model.post({ id, kind: 'sell', moves: [{ from: at(lot.id, placeId), to: null, units }] }),
    concerns: [lot.id],
  };
};

export const count: Planner<OfLot> = (ledger, choice) => {
  const found = lotAndPlace(ledger, choice);
  if (!found) return null;
  const { lot, placeId, here } = found;
  const countedUnits = choice.units - 1;
  const account = at(lot.id, placeId);
  const moves: Move[] = countedUnits > here ? [{ from: null, to: account, units: countedUnits - here }] : countedUnits < here ? [{ from: account, to: null, units: here - countedUnits }] : [];
  return {
    refusals: [],
    send: ({ procedures, sent }, commandId) => procedures.stock.countLot(sent({ ...entry, lotId: lot.id, placeId, countedUnits, countKind: 'counted' as const }, commandId)),
    apply: (model, id) => model.post({ id, kind: 'count', moves }),
    concerns: [lot.id],
  };
};

export type Reason = 'quarantine' | 'inspector';

export const hold: Planner<{ lot: number; reason: Reason }> = (ledger, { lot: number, reason }) => {
  const lot = chosen([...ledger.lots.values()], number);
  if (!lot) return null;
  return {
    refusals: [...(ledger.standing(lot.id).length === 0 ? ['nothing-there'] : []), ...(lot.holds.has(reason) ? ['already-held'] : [])],
    send: ({ procedures, sent }, commandId) => procedures.stock.holdMany(sent({ ...entry, lotIds: [lot.id], reason }, commandId)),
    apply: (model, id) => {
      model.lot(lot.id).holds.set(reason, id);
      model.post({ id, kind: 'hold', moves: [] });
    },
    concerns: [lot.id],
  };
};

export const release: Planner<{ lot: number; reason: Reason }> = (ledger, { lot: number, reason }) => {
  const held = [...ledger.lots.values()].filter(({ holds }) => holds.size > 0);
  const lot = chosen(held.length > 0 ? held : [...ledger.lots.values()], number);
  if (!lot) return null;
  const openedBy = lot.holds.get(reason);
  return {
    refusals: openedBy === undefined ? ['not-held'] : [],
    send: ({ procedures, sent }, commandId) => procedures.stock.releaseLot(sent({ ...entry, lotId: lot.id, reason, releaseReason: 'looked it over' }, commandId)),
    apply: (model, id) => {
      model.lot(lot.id).holds.delete(reason);
      model.post({ id, kind: 'release', moves: [], released: { lotId: lot.id, reason, openedBy: openedBy ?? '' } });
    },
    concerns: [lot.id],
  };
};

export const reverse: Planner<{ entry: number }> = (ledger, { entry: number }) => {
  // The last one first: it is what people take back.
  const found = chosen([...ledger.entries].reverse(), number);
  if (!found) return null;
  const closed = found.orderIds.some((orderId) => !ledger.order(orderId).isOpen);
  const refusals = found.kind === 'reverse' ? ['reversal-is-final'] : found.isReversed ? ['already-reversed']
    : [...(ledger.couldReverse(found) ? [] : ['units-have-gone']), ...(closed && found.cancels !== true ? ['order-not-open'] : [])];
  return {
    refusals,
    send: ({ procedures, sent }, commandId) => procedures.stock.reverseEntry(sent({ entryId: found.id }, commandId)),
    apply: (model, id) => model.reverse(found, id),
    concerns: found.concerns,
    ...(found.carries ? { carries: found.carries } : {}),
  };
};
