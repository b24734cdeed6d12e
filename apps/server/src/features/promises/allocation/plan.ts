import {
  allocate,
  type AllocationInstance,
  type Assignment,
  keepCurrent,
  plantsIn,
  takeOutPins,
  traysIn,
} from '@rootclock/domain';
import { inherit } from './inherit.ts';
import { type Judged, type Judgement, judge, mayHold, readyFor } from './judging.ts';
import { openUnits, type Scope, type ScopeReservation, type ScopeSupply, servedOn } from './scope.ts';

/** Stands for the day of plants of which nobody knows when they will be ready. They are refused to every line, so that it is never compared. */
const NEVER = '2200-12-31';

/** Every pair of a scope whose items fit, judged once. */
export function judgeAll(scope: Scope): Judged {
  const byItem = new Map<string, ScopeSupply[]>();
  for (const supply of scope.supplies) byItem.set(supply.item, [...(byItem.get(supply.item) ?? []), supply]);
  return new Map(
    scope.lines.map((line) => {
      const supplies = [...new Set(line.accepts.map(({ item }) => item))].flatMap((item) => byItem.get(item) ?? []);
      return [line.id, new Map(supplies.map((supply) => [supply.id, judge(supply, line, scope)]))];
    }),
  );
}

/** The pairs alone that hold something, or whose line may inherit something there: a moment's work, however large the scope. */
function judgeHeld(scope: Scope): Judged {
  const supplies = new Map(scope.supplies.map((supply) => [supply.id, supply]));
  const heirs = scope.heirs.map(({ toId }) => toId);
  const held = new Map<string, Set<string>>();
  for (const { lineId, supplyId } of scope.reservations)
    held.set(lineId, (held.get(lineId) ?? new Set(heirs)).add(supplyId));
  return new Map(
    scope.lines.map((line) => [
      line.id,
      new Map(
        [...(held.get(line.id) ?? [])].flatMap((id) => {
          const supply = supplies.get(id);
          return supply ? [[id, judge(supply, line, scope)] as const] : [];
        }),
      ),
    ]),
  );
}

/**
 * The instance of a scope. What only this server knows (lead days, a region's windows, conditions, holds, releases) reaches the allocation
 * as refused supplies. What stands in trays is counted in whole trays there. Lines that want nothing more, or not a whole tray, are left out.
 */
export function instanceOf(
  scope: Scope,
  judged: Judged,
  reservations: readonly ScopeReservation[] = scope.reservations,
): AllocationInstance {
  const lines = scope.lines.filter((line) => traysIn(openUnits(line), line.cells) > 0);
  const demands = new Set(lines.map(({ id }) => id));
  const there = new Map(scope.supplies.map((supply) => [supply.id, supply]));
  return {
    today: scope.today,
    horizonOn: scope.horizonOn,
    supply: scope.supplies.map((supply) => ({
      id: supply.id,
      item: supply.item,
      units: traysIn(supply.units, supply.cells),
      readyOn: readyFor(supply, scope.today) ?? NEVER,
      plantByOn: supply.plantByOn,
      // Prices come with sales; until then every plant saved counts alike.
      unitValue: 1,
    })),
    demand: lines.map((line) => ({
      id: line.id,
      rank: line.rank,
      on: servedOn(line, scope.today),
      units: traysIn(openUnits(line), line.cells),
      accepts: line.accepts,
      refuses: [...(judged.get(line.id) ?? [])]
        .filter(
          ([id, judgement]) =>
            !judgement.serves && !isLeftToTheDays(judgement, there.get(id), servedOn(line, scope.today)),
        )
        .map(([id]) => id),
    })),
    current: reservations
      .filter(({ lineId, supplyId }) => demands.has(lineId) && judged.get(lineId)?.has(supplyId))
      .map(({ lineId, supplyId, units, pinned }) => ({
        supply: supplyId,
        demand: lineId,
        units: traysIn(units, there.get(supplyId)?.cells ?? null),
        pinned,
      }))
      .filter(({ units }) => units > 0),
  };
}

/** The allocation compares the days of supply and line itself; only a lead or a region's windows are more than it knows. */
const isLeftToTheDays = ({ penalty, reasons }: Judgement, supply: ScopeSupply | undefined, on: string) =>
  penalty !== null &&
  supply?.readyOn !== null &&
  reasons.every((reason) => reason === 'not-ready' || (reason === 'past-plant-by' && (supply?.plantByOn ?? on) < on));

/** What is stored may stay only where its line accepts the item; what is pinned, only where a pin may be. */
function mayStay({ lineId, supplyId, pinned }: ScopeReservation, judged: Judged): boolean {
  const judgement = judged.get(lineId)?.get(supplyId);
  if (!judgement || judgement.penalty === null) return false;
  return !pinned || mayHold(judgement);
}

/** What is left to be solved of a scope, and the reservations that follow from a solution: pinned ones stay as far as their plants exist. */
interface PreparedPlan {
  instance: AllocationInstance;
  reservationsOf(solution: readonly Assignment[]): ScopeReservation[];
}

function preparePlan(scope: Scope, judged: Judged): PreparedPlan {
  const standing = inherit(scope, judged).filter((row) => mayStay(row, judged));
  const { pins, rest: instance } = takeOutPins(instanceOf(scope, judged, standing));
  const supplies = new Map(scope.supplies.map((supply) => [supply.id, supply]));
  const stored = (rows: readonly Assignment[], pinned: boolean) =>
    rows.map(({ supply, demand, units }) => {
      const { kind: supplyKind = 'lot', cells = null } = supplies.get(supply) ?? {};
      return { lineId: demand, supplyId: supply, supplyKind, units: plantsIn(units, cells), pinned };
    });
  return { instance, reservationsOf: (solution) => [...stored(pins, true), ...stored(solution, false)] };
}

/** The reservations as they should be. */
export function planReservations(scope: Scope): ScopeReservation[] {
  const { instance, reservationsOf } = preparePlan(scope, judgeAll(scope));
  return reservationsOf(allocate(instance).assignments);
}

/** The reservations without solving: what lines hold stays as far as its plants are there and serve, the lower rank first, and nobody is given anything new. */
export function keepReservations(scope: Scope): ScopeReservation[] {
  const { instance, reservationsOf } = preparePlan(scope, judgeHeld(scope));
  return reservationsOf(keepCurrent(instance));
}
