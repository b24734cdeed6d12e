// What was solved ahead is found again by what it is about, in whatever order its rows were read.
import fc from 'fast-check';
import type { AllocationInstance } from '@rootclock/domain';
import { afterAll, describe, expect, it } from 'vitest';
import { allocator } from '../../../apps/server/src/features/promises/planning/apart/allocator.ts';
import { drawInstance, LARGE } from '../../support/allocation/draw-instance.ts';
import { tries } from '../../support/tries.ts';

const WITHIN_MS = 30_000;
afterAll(() => allocator.stop());

const shuffled = <Row>(rows: readonly Row[], orders: readonly number[]): Row[] =>
  rows
    .map((row, at) => ({ row, order: orders[at % orders.length] ?? 0 }))
    .sort((a, b) => a.order - b.order)
    .map(({ row }) => row);

const readOtherwise = (
  { supply, demand, current, ...rest }: AllocationInstance,
  orders: readonly number[],
): AllocationInstance => ({
  ...rest,
  supply: shuffled(supply, orders),
  demand: shuffled(demand, orders).map((line) => ({
    ...line,
    accepts: shuffled(line.accepts, orders),
    refuses: shuffled(line.refuses ?? [], orders),
  })),
  current: shuffled(current ?? [], orders),
});

const instances = fc.nat(400).map((number) => drawInstance(10, number, LARGE));
const orders = fc.array(fc.integer(), { minLength: 3, maxLength: 31 });

describe('a solution that was foreseen', () => {
  it('is taken for the same instance read in any other order', async () => {
    await fc.assert(
      fc.asyncProperty(instances, orders, async (instance, otherwise) => {
        await allocator.foresee(instance);
        expect(await allocator.solve(readOtherwise(instance, otherwise), WITHIN_MS)).toBe(
          await allocator.solve(instance, WITHIN_MS),
        );
      }),
      tries(60),
    );
  });

  it('is not taken where a single number moved', async () => {
    await fc.assert(
      fc.asyncProperty(instances, async (instance) => {
        await allocator.foresee(instance);
        const [first, ...others] = instance.supply;
        if (!first) return;
        const moved = { ...instance, supply: [{ ...first, unitValue: first.unitValue + 1 }, ...others] };
        expect(await allocator.solve(moved, WITHIN_MS)).not.toBe(await allocator.solve(instance, WITHIN_MS));
      }),
      tries(20),
    );
  });
});
