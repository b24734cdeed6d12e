import { found, refuse } from '../../../refusal.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import { type LineFacts, loadLines } from '../../orders/lines/store.ts';
import { loadOpenOrder, type OrderFacts } from '../../orders/orders/store.ts';
import { requireSince } from '../../stock/ledger/post.ts';
import { type LotFacts, loadLots } from '../../stock/lots/store.ts';

export interface OrderRows {
  order: OrderFacts;
  lineOf(id: string): LineFacts;
  lotOf(id: string): LotFacts;
}

/**
 * Loads what the rows of an entry for an order name: lines of this very order that stand, and lots that had been potted by that day. A line
 * that was withdrawn may be named only where plants come back from it: they can stand staged for it once their planting was taken back.
 */
export async function loadOrderRows(
  context: CommandContext,
  orderId: string,
  happenedOn: string,
  rows: readonly { lineId: string; lotId: string }[],
  { withdrawnToo = false } = {},
): Promise<OrderRows> {
  const order = await loadOpenOrder(context, orderId);
  const lines = await loadLines(context, [...new Set(rows.map(({ lineId }) => lineId))]);
  for (const line of lines.values()) {
    if (line.orderId !== order.id) refuse('not-found', { what: 'line' }, 'lineId');
    if (line.withdrawnOn !== null && !withdrawnToo) refuse('line-withdrawn', { plant: line.scientificName }, 'lineId');
  }
  const lots = new Map(
    (await loadLots(context, [...new Set(rows.map(({ lotId }) => lotId))])).map((lot) => [lot.id, lot]),
  );
  for (const lot of lots.values()) requireSince(happenedOn, lot.pottedOn);
  return {
    order,
    lineOf: (id) => found(lines.get(id), 'line', 'lineId'),
    lotOf: (id) => found(lots.get(id), 'lot', 'lotId'),
  };
}

/** A hold keeps plants from leaving, whatever its reason. */
export function requireUnheld(lots: readonly LotFacts[]): void {
  const held = lots.find(({ holds }) => holds.length > 0);
  if (held) refuse('lot-held', { lot: held.code, reasons: held.holds }, 'lotId');
}

export function requireAcceptedItem(line: LineFacts, lot: LotFacts): void {
  if (!line.accepts.some(({ plantId, containerId }) => plantId === lot.plantId && containerId === lot.containerId)) {
    refuse('not-accepted', { lot: lot.code, accepted: line.accepts.map(({ name }) => name) }, 'lotId');
  }
}

/** What several rows take from the same lot at the same place must be there together. `field` is where a row's units stand in what was sent. */
export function requireAtPlaces(
  rows: readonly { lotId: string; placeId: string; units: number; field?: string }[],
  lotOf: (id: string) => LotFacts,
): void {
  const taken = new Map<string, number>();
  for (const [at, { lotId, placeId, units, field }] of rows.entries()) {
    const lot = lotOf(lotId);
    const key = `${lotId}/${placeId}`;
    const wanted = (taken.get(key) ?? 0) + units;
    const available = lot.balances.find((balance) => balance.placeId === placeId)?.units ?? 0;
    if (wanted > available)
      refuse('not-enough-units', { wanted, available, of: lot.code }, field ?? `rows.${at}.units`);
    taken.set(key, wanted);
  }
}

/** The same for what stands staged for a line. */
export function requireStaged(
  rows: readonly { lineId: string; lotId: string; units: number }[],
  staged: readonly { lineId: string; lotId: string; units: number }[],
  lotOf: (id: string) => LotFacts,
): void {
  const taken = new Map<string, number>();
  for (const [at, { lineId, lotId, units }] of rows.entries()) {
    const key = `${lineId}/${lotId}`;
    const wanted = (taken.get(key) ?? 0) + units;
    const there = staged.find((row) => row.lineId === lineId && row.lotId === lotId)?.units ?? 0;
    if (wanted > there)
      refuse('not-enough-staged', { wanted, staged: there, of: lotOf(lotId).code }, `rows.${at}.units`);
    taken.set(key, wanted);
  }
}
