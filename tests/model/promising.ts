// What must be promised to whom: of each item there is so much, and whoever asked first is served first.
import { at, type Item, type Ledger } from './ledger.ts';

/** Plants in big pots must be in the ground by this day. */
export const BIG_POT_LIMIT_ON = '2026-06-09';

export interface WhatIf {
  /** Days of orders. */
  dueOn?: ReadonlyMap<string, string>;
  ranking?: readonly string[];
  pins?: ReadonlyMap<string, number>;
}

export const serves = (item: Item, dueOn: string) => item === 'small' || dueOn <= BIG_POT_LIMIT_ON;

/** Units of a lot that may be promised: none of what is held or in quarantine. */
export const supplyOf = (ledger: Ledger, lotId: string) =>
  ledger.lot(lotId).holds.size > 0
    ? 0
    : ledger.placeIds.reduce(
        (sum, placeId) => sum + (placeId === ledger.quarantineId ? 0 : ledger.of(at(lotId, placeId))),
        0,
      );

const pinnedTo = (pins: ReadonlyMap<string, number>, lineId: string) =>
  [...pins].reduce((sum, [pair, units]) => sum + (pair.startsWith(`${lineId}/`) ? units : 0), 0);

/** Units reserved for each open line: what is pinned to it, and of what is left as much as it wants, in turn. */
export function reservedBy(
  ledger: Ledger,
  { dueOn, ranking = ledger.ranking, pins = ledger.pins }: WhatIf = {},
): Map<string, number> {
  const left = new Map<Item, number>([
    ['small', 0],
    ['big', 0],
  ]);
  for (const lot of ledger.lots.values()) left.set(lot.item, (left.get(lot.item) ?? 0) + supplyOf(ledger, lot.id));
  for (const [pair, units] of pins) {
    const { item } = ledger.lot(pair.slice(pair.indexOf('/') + 1));
    left.set(item, (left.get(item) ?? 0) - units);
  }
  return new Map(
    ranking.flatMap((lineId) => {
      const line = ledger.line(lineId);
      const order = ledger.order(line.orderId);
      if (!order.isOpen || line.isWithdrawn) return [];
      const pinned = pinnedTo(pins, lineId);
      const more = serves(line.item, dueOn?.get(order.id) ?? order.dueOn)
        ? Math.min(ledger.openUnits(line) - pinned, left.get(line.item) ?? 0)
        : 0;
      left.set(line.item, (left.get(line.item) ?? 0) - more);
      return [[lineId, pinned + more] as const];
    }),
  );
}

/** By how many units lines become shorter when something changes, leaving out those that do not. */
export function shortenings(ledger: Ledger, change: WhatIf): { lineId: string; units: number }[] {
  const now = reservedBy(ledger);
  return [...reservedBy(ledger, change)].flatMap(([lineId, then]) => {
    const done = ledger.line(lineId).wanted - ledger.openUnits(ledger.line(lineId));
    const units = Math.min((now.get(lineId) ?? 0) + done, ledger.line(lineId).wanted) - (then + done);
    return units > 0 ? [{ lineId, units }] : [];
  });
}

/** The turn of an order's lines on another day: they keep it unless that leaves others shorter, and else go last. */
export function turnOf(
  ledger: Ledger,
  orderId: string,
  day: string,
): { keepsRank: boolean; ranking: string[]; shorter: { lineId: string; units: number }[] } {
  const dueOn = new Map([[orderId, day]]);
  const isOwn = (lineId: string) => ledger.line(lineId).orderId === orderId && !ledger.line(lineId).isWithdrawn;
  const kept = shortenings(ledger, { dueOn });
  if (kept.every(({ lineId }) => isOwn(lineId))) return { keepsRank: true, ranking: ledger.ranking, shorter: kept };
  const ranking = [...ledger.ranking.filter((lineId) => !isOwn(lineId)), ...ledger.ranking.filter(isOwn)];
  return { keepsRank: false, ranking, shorter: shortenings(ledger, { dueOn, ranking }) };
}
