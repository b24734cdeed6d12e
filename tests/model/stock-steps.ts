import { at, type Ledger, type Move } from './ledger.ts';
import { chosen, type Planner } from './step.ts';
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

export const isShort = (units: number, here: number) => (units > here ? ['not-enough-units'] : []);

export const receive: Planner<{ place: number; units: number; quarantine: boolean }> = (
  ledger,
  { place, units, quarantine },
) => {
  const lotId = ledger.id('lot');
  const placeId = chosen(ledger.placeIds, place) ?? '';
  return {
    refusals: [],
    send: ({ procedures, sent, plantId, containerIds, sourceId }, commandId) =>
      procedures.stock.receiveBought(
        sent(
          {
            ...entry,
            quarantine,
            lines: [
              {
                lotId,
                plantId,
                form: 'pots' as const,
                containerId: containerIds.small,
                placeId,
                receivedUnits: units,
                sourceId,
                rootChecked: true,
              },
            ],
          },
          commandId,
        ),
      ),
    apply: (model, id) => {
      model.addLot(lotId, 'small');
      if (quarantine) model.lot(lotId).holds.set('quarantine', id);
      model.post({ id, kind: 'receive', moves: [{ from: null, to: at(lotId, placeId), units }] });
    },
    concerns: [lotId],
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
    send: ({ procedures, sent }, commandId) =>
      procedures.stock.moveLot(sent({ ...entry, lotId: lot.id, placeId, units, toPlaceId }, commandId)),
    apply: (model, id) =>
      model.post({ id, kind: 'move', moves: [{ from: at(lot.id, placeId), to: at(lot.id, toPlaceId), units }] }),
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
    send: ({ procedures, sent }, commandId) =>
      procedures.stock.loseFromLot(
        sent({ ...entry, lotId: lot.id, placeId, units, cause: 'drought' as const }, commandId),
      ),
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
    send: ({ procedures, sent }, commandId) =>
      procedures.stock.sellFromLot(sent({ ...entry, lotId: lot.id, placeId, units }, commandId)),
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
  const moves: Move[] =
    countedUnits > here
      ? [{ from: null, to: account, units: countedUnits - here }]
      : countedUnits < here
        ? [{ from: account, to: null, units: here - countedUnits }]
        : [];
  return {
    refusals: [],
    send: ({ procedures, sent }, commandId) =>
      procedures.stock.countLot(
        sent({ ...entry, lotId: lot.id, placeId, countedUnits, countKind: 'counted' as const }, commandId),
      ),
    apply: (model, id) => model.post({ id, kind: 'count', moves }),
    concerns: [lot.id],
  };
};

export type Reason = 'quarantine' | 'inspector';

export const hold: Planner<{ lot: number; reason: Reason }> = (ledger, { lot: number, reason }) => {
  const lot = chosen([...ledger.lots.values()], number);
  if (!lot) return null;
  return {
    refusals: [
      ...(ledger.standing(lot.id).length === 0 ? ['nothing-there'] : []),
      ...(lot.holds.has(reason) ? ['already-held'] : []),
    ],
    send: ({ procedures, sent }, commandId) =>
      procedures.stock.holdMany(sent({ ...entry, lotIds: [lot.id], reason }, commandId)),
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
    send: ({ procedures, sent }, commandId) =>
      procedures.stock.releaseLot(
        sent({ ...entry, lotId: lot.id, reason, releaseReason: 'looked it over' }, commandId),
      ),
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
  const refusals =
    found.kind === 'reverse'
      ? ['reversal-is-final']
      : found.isReversed
        ? ['already-reversed']
        : [
            ...(ledger.couldReverse(found) ? [] : ['units-have-gone']),
            ...(closed && found.cancels !== true ? ['order-not-open'] : []),
          ];
  return {
    refusals,
    send: ({ procedures, sent }, commandId) => procedures.stock.reverseEntry(sent({ entryId: found.id }, commandId)),
    apply: (model, id) => model.reverse(found, id),
    concerns: found.concerns,
    ...(found.carries ? { carries: found.carries } : {}),
  };
};
