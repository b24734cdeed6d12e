import type { promises } from '@rootclock/contracts';
import { compareText } from '@rootclock/domain';
import { shortageExplainer } from '../allocation/explain.ts';
import type { Judged } from '../allocation/judging.ts';
import { judgeAll, planReservations } from '../allocation/plan.ts';
import { openUnits, type Scope, type ScopeLine, type ScopeReservation, type ScopeSupply } from '../allocation/scope.ts';
import type { Trial } from './trial.ts';

/** Units by line and lot or batch, pinned ones and floating ones together. */
type Held = ReadonlyMap<string, ReadonlyMap<string, number>>;

/** Who would hold how much less or more of a lot or batch. */
interface Shift {
  lineId: string;
  orderCode: string;
  units: number;
}

/** What is different then, line by line: the plan is made anew as a command would make it, and compared with what is stored. */
export function difference({ before, after, own, keepsRank }: Trial): promises.WhatIf {
  const planned = planReservations(after);
  const heldBefore = heldOf(before.reservations);
  const heldAfter = heldOf(planned);
  const lines = linesOf(before, after);
  const shifts = shiftsOf(lines, heldBefore, heldAfter);
  const judged = judgeAll(after);
  const explain = shortageExplainer({ ...after, reservations: planned });
  const suppliesBefore = byId(before.supplies);
  const suppliesAfter = byId(after.supplies);

  const rows = lines.map(({ line, standing }): promises.WhatIfLine => {
    const changes = [...shifts].flatMap(([supplyId, rowsOf]) =>
      rowsOf.filter(({ lineId }) => lineId === line.id).map(({ units }) => ({ supplyId, units })),
    );
    const named = changes
      .flatMap(({ supplyId, units }) => {
        const supply = suppliesBefore.get(supplyId) ?? suppliesAfter.get(supplyId);
        return supply
          ? [{ supply, units, row: { supplyId, supplyKind: supply.kind, code: supply.code, units: Math.abs(units) } }]
          : [];
      })
      .sort((a, b) => compareText(a.supply.code, b.supply.code));
    const givesUp = named
      .filter(({ units }) => units < 0)
      .map(({ supply, row }): promises.GivenUp => {
        const why =
          standing === 'gone'
            ? { why: 'order-gone' as const, orders: [] }
            : whyGivenUp(line, supply, suppliesAfter.get(supply.id), judged, shifts);
        return { ...row, ...why };
      });
    const takes = named
      .filter(({ units }) => units > 0)
      .map(({ supply, row }): promises.Taken => ({
        ...row,
        orders: ordersOf(shifts.get(supply.id), (units) => units < 0),
      }));
    const filledNow =
      standing === 'added' ? 0 : line.stagedUnits + line.deliveredUnits + unitsOf(heldBefore.get(line.id));
    // The pulled plants of an order that is gone are back on a bench; what was planted stays planted.
    const filledThen =
      standing === 'gone'
        ? line.deliveredUnits
        : line.stagedUnits + line.deliveredUnits + unitsOf(heldAfter.get(line.id));
    const shortThen = standing === 'gone' ? 0 : Math.max(0, line.units - filledThen);
    const { id: lineId, orderId, orderCode, clientName, dueOn, scientificName, containerCode, units } = line;
    return {
      lineId,
      orderId,
      orderCode,
      clientName,
      dueOn,
      scientificName,
      containerCode,
      units,
      filledNow,
      filledThen,
      standing,
      givesUp,
      takes,
      shortThen,
      shorterBy: standing === 'stays' ? Math.max(0, Math.min(filledNow, units) - filledThen) : 0,
      reasons: shortThen > 0 ? explain(line) : [],
    };
  });
  const isChanged = (row: promises.WhatIfLine) =>
    row.givesUp.length > 0 || row.takes.length > 0 || row.filledNow !== row.filledThen;
  const ownRows = rows.filter(({ lineId }) => own.has(lineId));
  const others = rows.filter((row) => !own.has(row.lineId) && isChanged(row));
  return {
    lines: [...ownRows, ...others],
    unchangedLines: rows.length - ownRows.length - others.length,
    keepsRank,
    totals: {
      shortNow: shortOf(before, heldBefore),
      shortThen: shortOf(after, heldAfter),
      decliningNow: decliningOf(before, heldBefore),
      decliningThen: decliningOf(after, heldAfter),
    },
  };
}

/** Every line that is there now or then, as it would be then, in the order of turns. */
function linesOf(before: Scope, after: Scope): { line: ScopeLine; standing: promises.WhatIfLine['standing'] }[] {
  const known = byId(before.lines);
  const left = byId(after.lines);
  return [
    ...after.lines.map((line) => ({ line, standing: known.has(line.id) ? ('stays' as const) : ('added' as const) })),
    ...before.lines.filter(({ id }) => !left.has(id)).map((line) => ({ line, standing: 'gone' as const })),
  ].sort((a, b) => a.line.rank - b.line.rank);
}

function whyGivenUp(
  line: ScopeLine,
  before: ScopeSupply,
  after: ScopeSupply | undefined,
  judged: Judged,
  shifts: ReadonlyMap<string, readonly Shift[]>,
): Pick<promises.GivenUp, 'why' | 'orders'> {
  if (!after) return { why: 'gone', orders: [] };
  const [reason] = judged.get(line.id)?.get(before.id)?.reasons ?? [];
  if (reason) return { why: reason, orders: [] };
  if (after.units < before.units) return { why: 'gone', orders: [] };
  const orders = ordersOf(shifts.get(before.id), (units) => units > 0);
  return orders.length > 0 ? { why: 'to-others', orders } : { why: 'exchanged', orders: [] };
}

function shiftsOf(lines: readonly { line: ScopeLine }[], before: Held, after: Held): Map<string, Shift[]> {
  const shifts = new Map<string, Shift[]>();
  for (const { line } of lines) {
    const was = before.get(line.id);
    const becomes = after.get(line.id);
    for (const supplyId of new Set([...(was?.keys() ?? []), ...(becomes?.keys() ?? [])])) {
      const units = (becomes?.get(supplyId) ?? 0) - (was?.get(supplyId) ?? 0);
      if (units !== 0)
        shifts.set(supplyId, [...(shifts.get(supplyId) ?? []), { lineId: line.id, orderCode: line.orderCode, units }]);
    }
  }
  return shifts;
}

const ordersOf = (shifts: readonly Shift[] = [], matches: (units: number) => boolean) => [
  ...new Set(shifts.filter(({ units }) => matches(units)).map(({ orderCode }) => orderCode)),
];

function heldOf(rows: readonly ScopeReservation[]): Held {
  const held = new Map<string, Map<string, number>>();
  for (const { lineId, supplyId, units } of rows) {
    const line = held.get(lineId) ?? new Map<string, number>();
    held.set(lineId, line.set(supplyId, (line.get(supplyId) ?? 0) + units));
  }
  return held;
}

const byId = <Row extends { id: string }>(rows: readonly Row[]) => new Map(rows.map((row) => [row.id, row]));
const unitsOf = (held: ReadonlyMap<string, number> | undefined) =>
  [...(held?.values() ?? [])].reduce((sum, units) => sum + units, 0);
const shortOf = ({ lines }: Scope, held: Held) =>
  lines.reduce((sum, line) => sum + Math.max(0, openUnits(line) - unitsOf(held.get(line.id))), 0);

/** Plants that nobody is promised and that must leave their pots before the season ends. Held ones are no supply and not counted. */
function decliningOf({ supplies, horizonOn }: Scope, held: Held): number {
  const promised = new Map<string, number>();
  for (const line of held.values())
    for (const [supplyId, units] of line) promised.set(supplyId, (promised.get(supplyId) ?? 0) + units);
  return supplies
    .filter((supply) => !supply.held && supply.plantByOn !== null && supply.plantByOn <= horizonOn)
    .reduce((sum, supply) => sum + Math.max(0, supply.units - (promised.get(supply.id) ?? 0)), 0);
}
