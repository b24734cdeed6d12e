import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromDayNumber, toDayNumber } from '../kernel/dates.ts';
import { serveDemands } from './missing.ts';
import { demandOf, supplyOf } from './sample-facts.ts';

const shortOf = (...args: Parameters<typeof serveDemands>) =>
  serveDemands(...args).short.map(({ demand, units }) => [demand.id, units]);

describe('what is missing', () => {
  it('is what stock does not cover', () =>
    expect(shortOf([demandOf({ units: 50 })], [supplyOf({ units: 40 })])).toEqual([['D1', 10]]));
  it('is nothing where stock suffices', () =>
    expect(shortOf([demandOf({ units: 40 })], [supplyOf({ units: 40 })])).toEqual([]));
  it('is all of it where the stock is ready too late', () =>
    expect(shortOf([demandOf({ units: 5 })], [supplyOf({ readyOn: '2027-06-02' })])).toEqual([['D1', 5]]));
  it('is all of it where the stock must be planted before', () =>
    expect(shortOf([demandOf({ units: 5 })], [supplyOf({ plantByOn: '2027-05-31' })])).toEqual([['D1', 5]]));
  it('is all of it where nobody knows when a batch is ready', () =>
    expect(shortOf([demandOf({ units: 5 })], [supplyOf({ readyOn: null })])).toEqual([['D1', 5]]));
  it('counts what is expected to live on the day', () => {
    // 40 plants of which half survive the winter that lies before the day.
    expect(
      shortOf([demandOf({ units: 30 })], [supplyOf({ units: 40, countedOn: '2026-11-15', winterSurvival: 0.5 })]),
    ).toEqual([['D1', 10]]);
  });
  it('counts the plants that have to stand today for those of a later day', () => {
    const supplies = [supplyOf({ units: 40, countedOn: '2026-11-15', winterSurvival: 0.5 })];
    expect(
      shortOf([demandOf({ id: 'D1', rank: 1, units: 15 }), demandOf({ id: 'D2', rank: 2, units: 15 })], supplies),
    ).toEqual([['D2', 10]]);
  });
  it('serves orders by rank and what is only expected after them', () => {
    const expected = demandOf({ id: 'A', kind: 'expected', rank: null, units: 10 });
    expect(
      shortOf(
        [expected, demandOf({ id: 'D2', rank: 2, units: 25 }), demandOf({ id: 'D1', rank: 1, units: 10 })],
        [supplyOf({ units: 30 })],
      ),
    ).toEqual([
      ['D2', 5],
      ['A', 10],
    ]);
  });
  it('leaves to each demand what is reserved for it', () => {
    const demands = [
      demandOf({ id: 'D1', rank: 1, units: 30 }),
      demandOf({ id: 'D2', rank: 2, units: 30, held: [{ supplyId: 'L1', units: 30 }] }),
    ];
    expect(shortOf(demands, [supplyOf({ units: 40 })])).toEqual([['D1', 20]]);
  });
  it('takes nothing that was judged unfit', () =>
    expect(shortOf([demandOf({ units: 5, refuses: ['L1'] })], [supplyOf()])).toEqual([['D1', 5]]));
  it('takes a substitute only after what was asked for', () => {
    const accepts = [
      { item: 'P1@pot', penalty: 0 },
      { item: 'P2@pot', penalty: 3 },
    ];
    const { given } = serveDemands(
      [demandOf({ units: 50, accepts })],
      [supplyOf({ id: 'A', item: 'P2@pot' }), supplyOf({ id: 'B', units: 45 })],
    );
    expect(given.map(({ supplyId, plants }) => [supplyId, plants])).toEqual([
      ['B', 45],
      ['A', 5],
    ]);
  });
  it('refuses units that are none', () =>
    expect(() => serveDemands([demandOf({ units: 0 })], [])).toThrow(
      expect.objectContaining({ name: 'InputError', argument: 'demands.0.units' }),
    ));
});

const day = fc.integer({ min: toDayNumber('2027-01-15'), max: toDayNumber('2028-12-31') }).map(fromDayNumber);
const supplies = fc
  .array(
    fc.record({
      units: fc.integer({ min: 0, max: 60 }),
      readyOn: day,
      plantByOn: fc.option(day),
      lossRatePerDay: fc.double({ min: 0, max: 0.01, noNaN: true }),
      winterSurvival: fc.double({ min: 0.1, max: 1, noNaN: true }),
    }),
    { maxLength: 6 },
  )
  .map((rows) => rows.map((row, at) => supplyOf({ ...row, id: `L${at}` })));
const demands = fc
  .array(fc.record({ units: fc.integer({ min: 1, max: 60 }), on: day, firm: fc.boolean() }), {
    minLength: 1,
    maxLength: 6,
  })
  .map((rows) =>
    rows.map(({ firm, ...row }, at) =>
      demandOf({ ...row, id: `D${at}`, kind: firm ? 'installation' : 'expected', rank: firm ? at : null }),
    ),
  );

describe('serving demands', () => {
  it('does not depend on the order of the facts', () => {
    fc.assert(
      fc.property(
        demands,
        supplies,
        (wanted, there) =>
          void expect(serveDemands([...wanted].reverse(), [...there].reverse())).toEqual(serveDemands(wanted, there)),
      ),
      { seed: 51 },
    );
  });
  it('gives nobody more than wanted, and never more than is expected to live', () => {
    fc.assert(
      fc.property(demands, supplies, (wanted, there) => {
        const { given, short } = serveDemands(wanted, there);
        for (const { id, units } of wanted) {
          const got = given.filter(({ demandId }) => demandId === id).reduce((sum, { plants }) => sum + plants, 0);
          expect(got + (short.find(({ demand }) => demand.id === id)?.units ?? 0)).toBe(units);
        }
        for (const { id, units } of there)
          expect(
            given.filter(({ supplyId }) => supplyId === id).reduce((sum, { plants }) => sum + plants, 0),
          ).toBeLessThanOrEqual(units);
      }),
      { seed: 52 },
    );
  });
  it('leaves nothing lacking that something free could serve', () => {
    fc.assert(
      fc.property(demands, supplies, (wanted, there) => {
        const lossless = there.map((supply) => ({ ...supply, lossRatePerDay: 0, winterSurvival: 1 }));
        const { given, short } = serveDemands(wanted, lossless);
        for (const { demand } of short) {
          for (const supply of lossless) {
            const isFree =
              given.filter(({ supplyId }) => supplyId === supply.id).reduce((sum, { plants }) => sum + plants, 0) <
              supply.units;
            expect(
              isFree && (supply.readyOn ?? '') <= demand.on && (supply.plantByOn ?? '9999-12-31') >= demand.on,
            ).toBe(false);
          }
        }
      }),
      { seed: 53 },
    );
  });
});
