import { at, type Item, type Ledger, type ModelLine, type ModelLot, type Move, staged } from './ledger.ts';
import { serves, shortenings, supplyOf, turnOf } from './promising.ts';
import { chosen, type Planner } from './step.ts';
import { TODAY } from './world.ts';

/** One on which plants in big pots may still go out, and one on which they may not. */
export const DUE_DAYS = ['2026-06-01', '2026-06-20'] as const;

const entry = { happenedOn: TODAY };

/** Lines that can still get something come first, and of lots those that could serve the line: what is refused anyway need not come often. */
export const likelyLines = (ledger: Ledger) => {
  const isOpen = (line: ModelLine) => Number(ledger.order(line.orderId).isOpen && !line.isWithdrawn);
  return [...ledger.lines.values()].sort((a, b) => isOpen(b) - isOpen(a));
};
export const likelyLots = (ledger: Ledger, line: ModelLine | undefined) => {
  const isFit = (lot: ModelLot) =>
    Number(lot.item === line?.item) * 4 + Number(lot.holds.size === 0) * 2 + Number(ledger.standing(lot.id).length > 0);
  return [...ledger.lots.values()].sort((a, b) => isFit(b) - isFit(a));
};

const anOrder = (ledger: Ledger, number: number) => chosen([...ledger.orders.values()], number);

export const order: Planner<{ item: Item; units: number; day: number }> = (ledger, { item, units, day }) => {
  const orderId = ledger.id('order');
  const lineId = ledger.id('line');
  const dueOn = chosen(DUE_DAYS, day) ?? '';
  return {
    refusals: [],
    send: ({ procedures, sent, plantId, containerIds, clientId, siteId }, commandId) =>
      procedures.orders.addOrder(
        sent(
          {
            orderId,
            clientId,
            siteId,
            kind: 'installation' as const,
            dueOn,
            lines: [{ lineId, plantId, containerId: containerIds[item], units }],
          },
          commandId,
        ),
      ),
    apply: (model) => {
      model.orders.set(orderId, { id: orderId, dueOn, isOpen: true });
      model.lines.set(lineId, { id: lineId, orderId, item, wanted: units, isWithdrawn: false });
      model.ranking = [...model.ranking, lineId];
    },
    concerns: [lineId],
  };
};

export const addLine: Planner<{ order: number; item: Item; units: number }> = (
  ledger,
  { order: number, item, units },
) => {
  const to = anOrder(ledger, number);
  if (!to) return null;
  const lineId = ledger.id('line');
  return {
    refusals: to.isOpen ? [] : ['order-not-open'],
    send: ({ procedures, sent, plantId, containerIds }, commandId) =>
      procedures.orders.addLine(
        sent({ orderId: to.id, lineId, plantId, containerId: containerIds[item], units }, commandId),
      ),
    apply: (model) => {
      model.lines.set(lineId, { id: lineId, orderId: to.id, item, wanted: units, isWithdrawn: false });
      model.ranking = [...model.ranking, lineId];
    },
    concerns: [lineId],
  };
};

export const changeDay: Planner<{ order: number; day: number }> = (ledger, { order: number, day }) => {
  const of = anOrder(ledger, number);
  if (!of) return null;
  const dueOn = chosen(DUE_DAYS, day) ?? '';
  const turn = turnOf(ledger, of.id, dueOn);
  return {
    refusals: of.isOpen ? [] : ['order-not-open'],
    shortens: turn.shorter,
    send: ({ procedures, sent }, commandId, accepted) =>
      procedures.promises.changeDay(sent({ orderId: of.id, dueOn, acceptedShortages: accepted }, commandId)),
    apply: (model) => {
      model.order(of.id).dueOn = dueOn;
      model.ranking = turn.ranking;
    },
    // A pin is a person's choice of plants and day: no change of day unties it.
    concerns: [],
  };
};

export const withdraw: Planner<{ line: number }> = (ledger, { line: number }) => {
  const line = chosen([...ledger.lines.values()], number);
  if (!line) return null;
  const refusals = [
    ...(ledger.order(line.orderId).isOpen ? [] : ['order-not-open']),
    ...(line.isWithdrawn ? ['line-withdrawn'] : []),
    ...(ledger.stagedFor(line.id) > 0 ? ['plants-are-staged'] : []),
  ];
  return {
    refusals,
    send: ({ procedures, sent }, commandId) => procedures.orders.withdrawLine(sent({ lineId: line.id }, commandId)),
    apply: (model) => void (model.line(line.id).isWithdrawn = true),
    concerns: [line.id],
  };
};

export const pin: Planner<{ line: number; lot: number; units: number }> = (
  ledger,
  { line: lineAt, lot: lotAt, units },
) => {
  const line = chosen(likelyLines(ledger), lineAt);
  const lot = chosen(likelyLots(ledger, line), lotAt);
  if (!line || !lot) return null;
  const { isOpen, dueOn } = ledger.order(line.orderId);
  const pair = `${line.id}/${lot.id}`;
  const others = [...ledger.pins].filter(([key]) => key !== pair);
  const sum = (pins: [string, number][]) => pins.reduce((total, [, pinned]) => total + pinned, 0);
  const doesServe = lot.item === line.item && lot.holds.size === 0 && serves(line.item, dueOn);
  const refusals = [
    ...(isOpen ? [] : ['order-not-open']),
    ...(line.isWithdrawn ? ['line-withdrawn'] : []),
    ...(doesServe ? [] : ['does-not-serve']),
    ...(units > ledger.openUnits(line) - sum(others.filter(([key]) => key.startsWith(`${line.id}/`)))
      ? ['more-than-line-needs']
      : []),
    ...(units > supplyOf(ledger, lot.id) - sum(others.filter(([key]) => key.endsWith(`/${lot.id}`)))
      ? ['pinned-by-others']
      : []),
  ];
  return {
    refusals,
    shortens: refusals.length > 0 ? [] : shortenings(ledger, { pins: new Map([...others, [pair, units]]) }),
    send: ({ procedures, sent }, commandId, accepted) =>
      procedures.promises.pinReservation(
        sent({ lineId: line.id, supplyId: lot.id, units, acceptedShortages: accepted }, commandId),
      ),
    apply: (model) => void model.pins.set(pair, units),
    concerns: [],
  };
};

export const issue: Planner<{ order: number }> = (ledger, { order: number }) => {
  const of = anOrder(ledger, number);
  if (!of) return null;
  return {
    refusals: of.isOpen ? [] : ['order-not-open'],
    send: ({ procedures, sent }, commandId) => procedures.gardens.issuePullList(sent({ orderId: of.id }, commandId)),
    apply: () => {},
    concerns: ledger.linesOf(of.id).map(({ id }) => id),
  };
};

export const cancel: Planner<{ order: number; place: number }> = (ledger, { order: number, place }) => {
  const of = anOrder(ledger, number);
  if (!of) return null;
  const placeId = chosen(ledger.placeIds, place) ?? '';
  const lines = ledger.linesOf(of.id);
  const moves: Move[] = lines
    .flatMap((line) =>
      [...ledger.lots.keys()].map((lotId) => ({
        from: staged(lotId, line.id),
        to: at(lotId, placeId),
        units: ledger.of(staged(lotId, line.id)),
      })),
    )
    .filter(({ units }) => units > 0);
  return {
    refusals: of.isOpen ? [] : ['order-not-open'],
    send: ({ procedures, sent }, commandId) =>
      procedures.gardens.cancelOrder(sent({ ...entry, orderId: of.id, placeId }, commandId)),
    apply: (model, id) => {
      model.post({ id, kind: 'return', moves, orderIds: [of.id], cancels: true });
      model.order(of.id).isOpen = false;
    },
    concerns: [...lines.map(({ id }) => id), ...moves.flatMap(({ from }) => from?.split('>')[0] ?? [])],
  };
};
