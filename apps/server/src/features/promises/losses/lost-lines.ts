import type { promises } from '@rootclock/contracts';
import { type Judgement, judge } from '../allocation/judging.ts';
import { openUnits, type Scope, type ScopeLine, type ScopeReservation, type ScopeSupply } from '../allocation/scope.ts';

export interface LostLine {
  lineId: string;
  units: number;
  filledBefore: number;
  supplies: { supplyId: string; units: number; why: promises.LostWhy }[];
}

type Held = ReadonlyMap<string, ReadonlyMap<string, number>>;

/**
 * Lines that hold less of what they still want than before. Lines of an order that the command itself named are left out: whoever changes an
 * order, pulls for it or ties plants to it sees what that does. What was taken out for a line is no loss either, since it wants no more of it.
 */
export function lostLines(scope: Scope, wanted: readonly ScopeReservation[], named: ReadonlySet<string>): LostLine[] {
  const before = heldOf(scope.reservations);
  const after = heldOf(wanted);
  const own = new Set(scope.lines.filter(({ id }) => named.has(id)).map(({ orderId }) => orderId));
  const supplies = new Map(scope.supplies.map((supply) => [supply.id, supply]));
  // What others hold more of than before. What a person tied to a line stood there already when the plan was made.
  const taken = new Set(
    [...after].flatMap(([lineId, held]) =>
      [...held]
        .filter(([supplyId, units]) => named.has(lineId) || units > (before.get(lineId)?.get(supplyId) ?? 0))
        .map(([supplyId]) => supplyId),
    ),
  );
  return scope.lines.flatMap((line) => {
    if (own.has(line.orderId)) return [];
    const held = unitsOf(before, line.id);
    const units = Math.min(held, openUnits(line)) - unitsOf(after, line.id);
    if (units <= 0) return [];
    const given = [...(before.get(line.id) ?? [])]
      .map(([supplyId, was]) => ({ supplyId, units: was - (after.get(line.id)?.get(supplyId) ?? 0) }))
      .filter((row) => row.units > 0);
    return [
      {
        lineId: line.id,
        units,
        filledBefore: Math.min(line.units, held + line.stagedUnits + line.deliveredUnits),
        supplies: given.map((row) => ({
          ...row,
          why: whyLost(line, supplies.get(row.supplyId), scope, (supplyId) => taken.has(supplyId)),
        })),
      },
    ];
  });
}

/** Lines that have all they want. A line is looked at when what it holds changed, or when the command named it: then it may want fewer. */
export function wholeLines(scope: Scope, wanted: readonly ScopeReservation[], named: ReadonlySet<string>): string[] {
  const before = heldOf(scope.reservations);
  const after = heldOf(wanted);
  return scope.lines
    .filter(({ id }) => named.has(id) || unitsOf(before, id) !== unitsOf(after, id))
    .filter((line) => unitsOf(after, line.id) >= openUnits(line))
    .map(({ id }) => id);
}

function whyLost(
  line: ScopeLine,
  supply: ScopeSupply | undefined,
  scope: Scope,
  isTaken: (supplyId: string) => boolean,
): promises.LostWhy {
  if (!supply) return 'gone';
  const {
    penalty,
    reasons: [reason],
  }: Judgement = judge(supply, line, scope);
  if (penalty === null) return 'not-accepted';
  return reason ?? (isTaken(supply.id) ? 'to-others' : 'gone');
}

function heldOf(rows: readonly ScopeReservation[]): Held {
  const held = new Map<string, Map<string, number>>();
  for (const { lineId, supplyId, units } of rows) {
    const line = held.get(lineId) ?? new Map<string, number>();
    held.set(lineId, line.set(supplyId, (line.get(supplyId) ?? 0) + units));
  }
  return held;
}

const unitsOf = (held: Held, lineId: string) =>
  [...(held.get(lineId)?.values() ?? [])].reduce((sum, units) => sum + units, 0);
