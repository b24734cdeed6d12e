/*
 * The answer of `allocate` against HiGHS (Q. Huangfu, J. A. J. Hall, "Parallelizing the dual revised simplex method", Mathematical Programming
 * Computation 10, 2018, 119–142), which solves the goals one after the other as linear programmes. Every goal has to come out the same.
 */
import { allocate, type AllocationAnswer, type AllocationInstance } from '@rootclock/domain';
import { FreshHighs } from '@rootclock/server/features/planning/plan/solver/fresh-highs';
import { describe, expect, it } from 'vitest';
import { compare } from '../../support/allocation/compare.ts';
import { drawInstance, LARGE, type Shape, SMALL, TINY } from '../../support/allocation/draw-instance.ts';
import { isServing } from '../../support/allocation/goals.ts';

const SEED = 20_261_129;
const shapes: [string, Shape, number][] = [
  ['up to 4 lots and 4 lines', TINY, 1000],
  ['up to 6 lots and 6 lines', SMALL, 2000],
  ['up to 24 lots and 24 lines', LARGE, 250],
];
const drawn = (shape: Shape, count: number) =>
  Array.from({ length: count }, (_, number) => drawInstance(SEED, number, shape));

// What goes wrong in one case must not reach the next.
const fresh = new FreshHighs();
const wrongOf = (instance: AllocationInstance, answer?: AllocationAnswer) =>
  fresh.use((highs) => compare(highs, instance, answer).wrong);

describe('goal by goal, allocation equals HiGHS', () => {
  it.each(shapes)(
    'on instances of %s',
    async (_, shape, count) => {
      const differing: { number: number; wrong: string[] }[] = [];
      for (const [number, instance] of drawn(shape, count).entries()) {
        const wrong = await wrongOf(instance);
        if (wrong.length > 0) differing.push({ number, wrong });
      }
      expect(differing).toEqual([]);
    },
    240_000,
  );

  it('and these instances hold everything that can make it hard, many times over', () => {
    const instances = drawn(SMALL, 2000);
    const count = (has: (instance: AllocationInstance) => boolean) => instances.filter(has).length;
    const pins = ({ current = [] }: AllocationInstance) => current.filter(({ pinned }) => pinned === true);
    const lotOf = ({ supply }: AllocationInstance, id: string) => supply.find((row) => row.id === id)!;
    const lineOf = ({ demand }: AllocationInstance, id: string) => demand.find((row) => row.id === id)!;
    const counts = {
      'a single item': count(({ supply }) => new Set(supply.map(({ item }) => item)).size === 1),
      'many items': count(({ supply }) => new Set(supply.map(({ item }) => item)).size > 1),
      'a substitute': count(({ demand }) => demand.some(({ accepts }) => accepts.some(({ penalty }) => penalty > 0))),
      'a refusal': count(({ demand }) => demand.some(({ refuses = [] }) => refuses.length > 0)),
      'a pin': count((instance) => pins(instance).length > 0),
      'pinned and floating units of one pair': count((instance) =>
        pins(instance).some((pin) =>
          instance.current?.some(
            (row) => row.pinned !== true && row.supply === pin.supply && row.demand === pin.demand,
          ),
        ),
      ),
      'equal ranks': count(({ demand }) => new Set(demand.map(({ rank }) => rank)).size < demand.length),
      'a lot of nothing': count(({ supply }) => supply.some(({ units }) => units === 0)),
      'a line on the day that a lot is ready': count(({ supply, demand }) =>
        demand.some(({ on }) => supply.some(({ readyOn }) => readyOn === on)),
      ),
      'a line on a plant-by day': count(({ supply, demand }) =>
        demand.some(({ on }) => supply.some(({ plantByOn }) => plantByOn === on)),
      ),
      'a plant-by day on the horizon': count(({ supply, horizonOn }) =>
        supply.some(({ plantByOn }) => plantByOn === horizonOn),
      ),
      'lots that never decline': count(({ supply }) => supply.some(({ plantByOn }) => plantByOn === null)),
      'a holding that does not fit': count((instance) =>
        (instance.current ?? []).some((row) => !isServing(lotOf(instance, row.supply), lineOf(instance, row.demand))),
      ),
      'a line that stays short': count((instance) => allocate(instance).short.length > 0),
    };
    expect(Object.entries(counts).filter(([, times]) => times < 60)).toEqual([]);
  });
});

describe('the comparison', () => {
  const instance: AllocationInstance = {
    today: '2027-04-20',
    horizonOn: '2027-10-31',
    supply: [
      { id: 'S1', item: 'asked', units: 5, readyOn: '2027-04-01', plantByOn: '2027-06-15', unitValue: 600 },
      { id: 'S2', item: 'asked', units: 5, readyOn: '2027-04-01', plantByOn: '2027-07-15', unitValue: 600 },
      { id: 'S3', item: 'asked', units: 5, readyOn: '2027-04-01', plantByOn: null, unitValue: 600 },
      { id: 'S4', item: 'other', units: 5, readyOn: '2027-04-01', plantByOn: '2027-06-15', unitValue: 600 },
      { id: 'S5', item: 'asked', units: 5, readyOn: '2027-04-01', plantByOn: '2027-06-15', unitValue: 600 },
    ],
    demand: [
      {
        id: 'D1',
        rank: 1,
        on: '2027-05-12',
        units: 5,
        accepts: [
          { item: 'asked', penalty: 0 },
          { item: 'other', penalty: 2 },
        ],
      },
    ],
    current: [{ supply: 'S5', demand: 'D1', units: 5 }],
  };
  const with5Of = (supply: string, filled = 5): AllocationAnswer => {
    const answer = allocate({ ...instance, supply: instance.supply.filter(({ id }) => id === supply), current: [] });
    const assignments = answer.assignments.map((row) => ({ ...row, units: filled }));
    return { ...answer, assignments, totals: { ...answer.totals, filled, moved: supply === 'S5' ? 5 - filled : 5 } };
  };

  it.each([
    ['a unit less', with5Of('S5', 4), 'filled is 4, and could be 5'],
    ['a substitute without need', with5Of('S4'), 'penalty is 10, and could be 0'],
    ['plants that never decline before those that do', with5Of('S3'), 'savedValue is 0, and could be 3000'],
    ['plants that decline later', with5Of('S2'), 'days is 430, and could be 280'],
    ['a move without need', with5Of('S1'), 'moved is 5, and could be 0'],
    ['more than a lot has', with5Of('S5', 6), 'supply S5 has more than its units'],
  ])('would notice %s', async (_, answer, noticed) => {
    expect(await wrongOf(instance, answer)).toContain(noticed);
  });

  it('would notice totals that are not those of the assignments', async () => {
    const answer = with5Of('S5');
    expect(await wrongOf(instance, answer)).toEqual([]);
    expect(await wrongOf(instance, { ...answer, totals: { ...answer.totals, savedValue: 1 } })).toEqual([
      'the total savedValue is 1, but its assignments come to 3000',
    ]);
  });
});
