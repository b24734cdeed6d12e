import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../kernel/dates.ts';
import { allocate } from './allocate.ts';
import { explainShortage } from './explain-shortage.ts';
import type { AllocationAnswer, AllocationCurrent, AllocationInstance } from './instance/instance.ts';
import { supplyServes } from './instance/supply-serves.ts';
import { promise, type PromiseAsk } from './promise.ts';

const day = fc.integer({ min: 0, max: 40 }).map((n) => addDays('2027-04-20', n));
const someItem = fc.constantFrom('ASTU@tall-1l', 'ASIN@tall-1l', 'LIAS@plug');
const someUnits = fc.integer({ min: 1, max: 30 });
const supplyId = fc.constantFrom('S1', 'S2', 'S3', 'S4', 'S5');
const demandId = fc.constantFrom('D1', 'D2', 'D3', 'D4', 'D5');
const someInstance: fc.Arbitrary<AllocationInstance> = fc
  .record({
    today: fc.constant('2027-04-20'),
    horizonOn: day,
    supply: fc.uniqueArray(
      fc.record({
        id: supplyId,
        item: someItem,
        units: fc.integer({ min: 0, max: 30 }),
        readyOn: day,
        plantByOn: fc.option(day),
        unitValue: fc.integer({ min: 0, max: 900 }),
      }),
      { selector: (row) => row.id },
    ),
    demand: fc.uniqueArray(
      fc.record({
        id: demandId,
        rank: fc.integer({ min: 1, max: 4 }),
        on: day,
        units: someUnits,
        refuses: fc.subarray(['S1', 'S2']),
        accepts: fc.uniqueArray(fc.record({ item: someItem, penalty: fc.integer({ min: 0, max: 3 }) }), {
          selector: (row) => row.item,
        }),
      }),
      { selector: (row) => row.id },
    ),
    current: fc.array(fc.record({ supply: supplyId, demand: demandId, units: someUnits, pinned: fc.boolean() }), {
      maxLength: 6,
    }),
  })
  .map(({ current, ...rest }) => ({ ...rest, current: fittingRows(rest, current) }));

/** Rows that name what is there; a pin that does not serve or does not fit any more is floating instead. */
function fittingRows(
  { supply, demand }: Pick<AllocationInstance, 'supply' | 'demand'>,
  rows: readonly AllocationCurrent[],
): AllocationCurrent[] {
  const left = new Map([...supply, ...demand].map(({ id, units }) => [id, units]));
  return rows.flatMap((row) => {
    const from = supply.find(({ id }) => id === row.supply);
    const to = demand.find(({ id }) => id === row.demand);
    if (!from || !to) return [];
    const fits =
      row.pinned === true &&
      supplyServes(from, to).serves &&
      row.units <= Math.min(left.get(from.id) ?? 0, left.get(to.id) ?? 0);
    if (fits) for (const { id } of [from, to]) left.set(id, (left.get(id) ?? 0) - row.units);
    return [{ ...row, pinned: fits }];
  });
}

describe('for any instance, allocation', () => {
  it('does not depend on the order of input', () => {
    fc.assert(
      fc.property(someInstance, (instance) => {
        const reversed = {
          ...instance,
          supply: [...instance.supply].reverse(),
          demand: [...instance.demand].reverse().map((row) => ({ ...row, accepts: [...row.accepts].reverse() })),
          current: [...(instance.current ?? [])].reverse(),
        };
        expect(allocate(reversed)).toEqual(allocate(instance));
      }),
    );
  });

  it('promises no unit twice and no line more than it asked for', () => {
    fc.assert(
      fc.property(someInstance, (instance) => {
        const { assignments } = allocate(instance);
        const total = (side: 'supply' | 'demand', id: string) =>
          assignments.filter((row) => row[side] === id).reduce((units, row) => units + row.units, 0);
        for (const { id, units } of instance.supply) expect(total('supply', id)).toBeLessThanOrEqual(units);
        for (const { id, units } of instance.demand) expect(total('demand', id)).toBeLessThanOrEqual(units);
        expect(assignments.every((row) => Number.isInteger(row.units) && row.units > 0)).toBe(true);
      }),
    );
  });

  it('assigns only what serves', () => {
    fc.assert(
      fc.property(someInstance, (instance) => {
        for (const { supply, demand } of allocate(instance).assignments) {
          const from = instance.supply.find((row) => row.id === supply);
          const to = instance.demand.find((row) => row.id === demand);
          expect(from !== undefined && to !== undefined && supplyServes(from, to).serves).toBe(true);
        }
      }),
    );
  });

  it('keeps all pinned units', () => {
    fc.assert(
      fc.property(someInstance, (instance) => {
        const { assignments } = allocate(instance);
        const units = (
          rows: readonly { supply: string; demand: string; units: number }[],
          { supply, demand }: AllocationCurrent,
        ) =>
          rows.filter((row) => row.supply === supply && row.demand === demand).reduce((sum, row) => sum + row.units, 0);
        const pins = (instance.current ?? []).filter((row) => row.pinned === true);
        for (const pin of pins) expect(units(assignments, pin)).toBeGreaterThanOrEqual(units(pins, pin));
      }),
    );
  });

  it('leaves no line short while units that serve it are free', () => {
    fc.assert(
      fc.property(someInstance, (instance) => {
        const { assignments, short } = allocate(instance);
        const given = (id: string) =>
          assignments.filter((row) => row.supply === id).reduce((sum, row) => sum + row.units, 0);
        for (const { demand } of short) {
          const row = instance.demand.find((one) => one.id === demand);
          const free = instance.supply.filter(
            (from) => row !== undefined && supplyServes(from, row).serves && given(from.id) < from.units,
          );
          expect(free).toEqual([]);
        }
      }),
    );
  });

  it('shortens no line for one of a later rank', () => {
    fc.assert(
      fc.property(someInstance, fc.integer({ min: 1, max: 60 }), (instance, wanted) => {
        const items = [...new Set(instance.supply.map((row) => row.item))];
        const last = {
          id: 'last',
          rank: 1000,
          on: '2027-05-10',
          units: wanted,
          accepts: items.map((item) => ({ item, penalty: 0 })),
        };
        const before = allocate(instance);
        const after = allocate({ ...instance, demand: [...instance.demand, last] });
        const shortByRank = ({ short }: AllocationAnswer) =>
          [1, 2, 3, 4].map((rank) =>
            short
              .filter((row) => instance.demand.some(({ id, rank: its }) => id === row.demand && its === rank))
              .reduce((sum, row) => sum + row.units, 0),
          );
        expect(shortByRank(after)).toEqual(shortByRank(before));
      }),
    );
  });

  it('accounts for every unit asked for', () => {
    fc.assert(
      fc.property(someInstance, (instance) => {
        const { short, totals } = allocate(instance);
        const asked = instance.demand.reduce((sum, row) => sum + row.units, 0);
        expect(totals.filled + short.reduce((sum, row) => sum + row.units, 0)).toBe(asked);
      }),
    );
  });

  it('solved again from its own answer moves nothing', () => {
    fc.assert(
      fc.property(someInstance, (instance) => {
        const first = allocate({ ...instance, current: [] });
        const again = allocate({ ...instance, current: first.assignments });
        expect(again.assignments).toEqual(first.assignments);
        expect(again.totals.moved).toBe(0);
      }),
    );
  });
});

describe('for any instance, an explained shortage', () => {
  it('finds every unit of the items a line accepts', () => {
    fc.assert(
      fc.property(someInstance, (instance) => {
        const answer = allocate({ ...instance, current: [] });
        for (const { demand: id } of answer.short) {
          const row = instance.demand.find((one) => one.id === id);
          const stock = instance.supply.filter((from) => row?.accepts.some((accepted) => accepted.item === from.item));
          const explained = explainShortage({ ...instance, current: [] }, id, answer);
          const { refused, 'not-ready': notReady, 'past-plant-by': past } = explained.unservedUnits;
          expect(explained.filledUnits + explained.promisedToOthersUnits + refused + notReady + past).toBe(
            stock.reduce((sum, from) => sum + from.units, 0),
          );
          expect(explained.freeUnits).toBe(0);
        }
      }),
    );
  });
});

describe('for any instance, a promise', () => {
  const asks = fc
    .record({
      units: fc.integer({ min: 1, max: 60 }),
      on: day,
      items: fc.subarray(['ASTU@tall-1l', 'ASIN@tall-1l', 'LIAS@plug'], { minLength: 1 }),
    })
    .map(({ units, on, items }) => ({ units, on, accepts: items.map((item) => ({ item, penalty: 0 })) }));
  const withLast = (given: AllocationInstance, asked: PromiseAsk) => ({
    ...given,
    demand: [...given.demand, { id: 'last', rank: 1000, ...asked }],
  });
  const filledOf = ({ short }: AllocationAnswer, units: number) =>
    units - (short.find(({ demand }) => demand === 'last')?.units ?? 0);

  it('is what a last line gets, and no more', () => {
    fc.assert(
      fc.property(someInstance, asks, (given, asked) => {
        expect(promise(given, asked).units).toBe(filledOf(allocate(withLast(given, asked)), asked.units));
      }),
      { numRuns: 300 },
    );
  });

  it('could not be kept on any day before the first that it tells', () => {
    fc.assert(
      fc.property(someInstance, asks, (given, asked) => {
        const { firstOn } = promise(given, asked);
        const met = given.supply
          .map(({ readyOn }) => readyOn)
          .concat(asked.on)
          .filter((on) => on >= asked.on)
          .filter((on) => filledOf(allocate(withLast(given, { ...asked, on })), asked.units) === asked.units)
          .sort();
        expect(firstOn).toBe(met[0] ?? null);
      }),
      { numRuns: 150 },
    );
  });

  it('names the plants that the line would get', () => {
    fc.assert(
      fc.property(someInstance, asks, (given, asked) => {
        const { from, units } = promise(given, asked);
        expect(from.reduce((sum, row) => sum + row.units, 0)).toBe(units);
      }),
      { numRuns: 150 },
    );
  });
});
