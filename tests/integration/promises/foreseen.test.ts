// What was solved ahead is found again by what it is about, in whatever order its rows were read.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Scope, ScopeLine, ScopeSupply } from '../../../apps/server/src/features/promises/allocation/scope.ts';
import { keyOf } from '../../../apps/server/src/features/promises/solving/solver.ts';

const shuffled = <Row>(rows: readonly Row[], orders: readonly number[]): Row[] =>
  rows
    .map((row, at) => ({ row, order: orders[at % orders.length] ?? 0 }))
    .sort((a, b) => a.order - b.order)
    .map(({ row }) => row);

const readOtherwise = ({ supplies, lines, reservations, ...rest }: Scope, orders: readonly number[]): Scope => ({
  ...rest,
  supplies: shuffled(supplies, orders),
  lines: shuffled(lines, orders).map((line) => ({
    ...line,
    accepts: shuffled(line.accepts, orders),
    refusedIds: shuffled(line.refusedIds, orders),
  })),
  reservations: shuffled(reservations, orders),
});

const ids = fc.integer({ min: 0, max: 30 }).map(String);
const day = fc.constantFrom('2026-05-20', '2026-06-01', '2026-09-15');
const supply = fc.record({ id: ids, item: ids, units: fc.nat(40), readyOn: day, plantByOn: day });
const line = fc.record({
  id: ids,
  rank: fc.nat(90),
  units: fc.nat(40),
  dueOn: day,
  accepts: fc.array(fc.record({ item: ids, penalty: fc.nat(3) }), { minLength: 1, maxLength: 6 }),
  refusedIds: fc.array(ids, { maxLength: 4 }),
});
const reservation = fc.record({
  lineId: ids,
  supplyId: ids,
  units: fc.integer({ min: 1, max: 9 }),
  pinned: fc.boolean(),
});
const scopes = fc
  .record({
    today: day,
    horizonOn: day,
    supplies: fc.array(supply, { minLength: 1, maxLength: 20 }),
    lines: fc.array(line, { minLength: 1, maxLength: 12 }),
    reservations: fc.array(reservation, { maxLength: 12 }),
    windows: fc.constant<Scope['windows']>([]),
    heirs: fc.constant<Scope['heirs']>([]),
  })
  .map((scope) => ({
    ...scope,
    supplies: scope.supplies as ScopeSupply[],
    lines: scope.lines as ScopeLine[],
    reservations: scope.reservations.map((row) => ({ ...row, supplyKind: 'lot' as const })),
  }));
const orders = fc.array(fc.integer(), { minLength: 3, maxLength: 31 });

describe('a plan that was foreseen', () => {
  it('is taken for the same scope read in any other order', () => {
    fc.assert(
      fc.property(scopes, orders, (scope, otherwise) => {
        expect(keyOf(readOtherwise(scope, otherwise))).toBe(keyOf(scope));
      }),
      { numRuns: 200 },
    );
  });

  it('is not taken where a single number moved', () => {
    fc.assert(
      fc.property(scopes, fc.constantFrom('supplies', 'lines', 'reservations'), (scope, where) => {
        const [first, ...others] = scope[where];
        if (!first) return;
        const moved = { ...scope, [where]: [{ ...first, units: first.units + 1 }, ...others] };
        expect(keyOf(moved)).not.toBe(keyOf(scope));
      }),
      { numRuns: 200 },
    );
  });
});
