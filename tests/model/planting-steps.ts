import { at, type Ledger, type Move, planted, staged } from './ledger.ts';
import { likelyLines, likelyLots } from './order-steps.ts';
import { chosen, type Planner } from './step.ts';
import { placeOf } from './stock-steps.ts';
import { TODAY } from './world.ts';

const entry = { happenedOn: TODAY };

export const pull: Planner<{ line: number; lot: number; place: number; units: number }> = (ledger, choice) => {
  const line = chosen(likelyLines(ledger), choice.line);
  const lot = chosen(likelyLots(ledger, line), choice.lot);
  if (!line || !lot) return null;
  const { placeId, here } = placeOf(ledger, lot.id, choice.place);
  const { units } = choice;
  const refusals = [
    ...(ledger.order(line.orderId).isOpen ? [] : ['order-not-open']),
    ...(line.isWithdrawn ? ['line-withdrawn'] : []),
    ...(lot.holds.size > 0 ? ['lot-held'] : []),
    ...(lot.item === line.item ? [] : ['not-accepted']),
    ...(units > here ? ['not-enough-units'] : []),
  ];
  return {
    refusals,
    send: ({ procedures, sent }, commandId) =>
      procedures.gardens.pullForOrder(
        sent(
          {
            ...entry,
            orderId: line.orderId,
            rows: [{ lineId: line.id, lotId: lot.id, placeId, units }],
            confirmed: true,
          },
          commandId,
        ),
      ),
    apply: (model, id) =>
      model.post({
        id,
        kind: 'pull',
        moves: [{ from: at(lot.id, placeId), to: staged(lot.id, line.id), units }],
        orderIds: [line.orderId],
      }),
    concerns: [lot.id, line.id],
  };
};

/** A lot that is staged for a line; where none is, any lot and line. */
function stagedPair(ledger: Ledger, number: number) {
  const pairs = [...ledger.lines.values()].flatMap((line) =>
    [...ledger.lots.values()].map((lot) => ({ line, lot, there: ledger.of(staged(lot.id, line.id)) })),
  );
  const standing = pairs.filter(({ there }) => there > 0);
  return chosen(standing.length > 0 ? standing : pairs, number);
}

export const plant: Planner<{ pair: number; units: number; extra: { place: number; units: number } | null }> = (
  ledger,
  { pair, units, extra },
) => {
  const found = stagedPair(ledger, pair);
  if (!found) return null;
  const { line, lot, there } = found;
  const from = extra === null ? null : placeOf(ledger, lot.id, extra.place);
  const refusals = [
    ...(ledger.order(line.orderId).isOpen ? [] : ['order-not-open']),
    ...(line.isWithdrawn ? ['line-withdrawn'] : []),
    ...(lot.holds.size > 0 ? ['lot-held'] : []),
    ...(units > there ? ['not-enough-staged'] : []),
    ...(extra && lot.item !== line.item ? ['not-accepted'] : []),
    ...(extra && from && extra.units > from.here ? ['not-enough-units'] : []),
  ];
  const more = extra?.units ?? 0;
  return {
    refusals,
    send: ({ procedures, sent }, commandId) =>
      procedures.gardens.plantOrder(
        sent(
          {
            ...entry,
            orderId: line.orderId,
            rows: [
              {
                lineId: line.id,
                lotId: lot.id,
                units,
                extra: extra && from ? { from: 'place' as const, placeId: from.placeId, units: extra.units } : null,
              },
            ],
          },
          commandId,
        ),
      ),
    apply: (model, id) => {
      const moves: Move[] = [
        ...(from ? [{ from: at(lot.id, from.placeId), to: staged(lot.id, line.id), units: more }] : []),
        { from: staged(lot.id, line.id), to: planted(line.id), units: units + more },
      ];
      model.post({ id, kind: 'plant', moves, orderIds: [line.orderId] });
    },
    concerns: [lot.id, line.id],
  };
};

export const giveBack: Planner<{ pair: number; returned: number; lost: number; place: number | null }> = (
  ledger,
  { pair, returned, lost, place },
) => {
  const found = stagedPair(ledger, pair);
  if (!found || returned + lost === 0) return null;
  const { line, lot, there } = found;
  const placeId = place === null ? null : (chosen(ledger.placeIds, place) ?? null);
  const refusals = [
    ...(ledger.order(line.orderId).isOpen ? [] : ['order-not-open']),
    ...(returned + lost > there ? ['not-enough-staged'] : []),
  ];
  return {
    refusals,
    send: ({ procedures, sent }, commandId) =>
      procedures.gardens.returnFromOrder(
        sent(
          {
            ...entry,
            orderId: line.orderId,
            placeId,
            cause: 'mishandled' as const,
            rows: [{ lineId: line.id, lotId: lot.id, returnedUnits: returned, lostUnits: lost }],
          },
          commandId,
        ),
      ),
    apply: (model, id) => {
      const from = staged(lot.id, line.id);
      const moves: Move[] = [
        { from, to: at(lot.id, placeId ?? model.quarantineId), units: returned },
        { from, to: null, units: lost },
      ];
      model.post({ id, kind: 'return', moves: moves.filter(({ units }) => units > 0), orderIds: [line.orderId] });
    },
    concerns: [lot.id, line.id],
  };
};
