import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromDayNumber, toDayNumber } from '../kernel/dates.ts';
import { productionPlan } from './plan.ts';
import type { PlanFacts } from './plan.ts';
import { demandOf, factsOf, protocolOf, sourceOf, supplyOf, trySolver } from './sample-facts.ts';

const PLANTS = ['P1', 'P2', 'P3'];
const day = fc.integer({ min: toDayNumber('2027-02-01'), max: toDayNumber('2027-11-30') }).map(fromDayNumber);
const demands = fc
  .array(
    fc.record({
      plantId: fc.constantFrom(...PLANTS),
      on: day,
      units: fc.integer({ min: 1, max: 80 }),
      firm: fc.boolean(),
      unitValue: fc.option(fc.integer({ min: 1, max: 900 })),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((rows) =>
    rows.map(({ firm, ...row }, at) =>
      demandOf({ ...row, id: `D${at}`, kind: firm ? 'pickup' : 'expected', rank: firm ? at : null }),
    ),
  );
const supplies = fc
  .array(fc.record({ plantId: fc.constantFrom(...PLANTS), units: fc.integer({ min: 0, max: 40 }) }), { maxLength: 3 })
  .map((rows) => rows.map(({ plantId, units }, at) => supplyOf({ id: `L${at}`, item: `${plantId}@pot`, units })));
const grams = fc.array(fc.option(fc.double({ min: 0, max: 3, noNaN: true })), { minLength: 3, maxLength: 3 });
const facts: fc.Arbitrary<PlanFacts> = fc
  .record({
    demands,
    supplies,
    grams,
    capacityCm2: fc.option(fc.integer({ min: 0, max: 20_000 })),
    confidence: fc.constantFrom(0.5, 0.8, 0.95),
    withProtocol: fc.subarray(PLANTS),
  })
  .map(({ capacityCm2, grams: left, withProtocol, ...rest }) =>
    factsOf({
      ...rest,
      space: { capacityCm2, standing: [] },
      plants: PLANTS.map((id) => ({ id, genus: 'Genus', rootHabit: 'fibrous', dormantMonths: [], isCultivar: false })),
      protocols: withProtocol.map((plantId) =>
        protocolOf({ plantId, versionId: `V${plantId}`, protocolId: `R${plantId}` }),
      ),
      sources: PLANTS.map((plantId, at) =>
        sourceOf({ id: `S${plantId}`, code: plantId, plantId, gramsLeft: left[at] ?? null }),
      ),
    }),
  );

describe('a plan', () => {
  it('does not depend on the order of its facts', async () => {
    await fc.assert(
      fc.asyncProperty(facts, async (given) => {
        const turned: PlanFacts = {
          ...given,
          demands: [...given.demands].reverse(),
          supplies: [...given.supplies].reverse(),
          protocols: [...given.protocols].reverse(),
          sources: [...given.sources].reverse(),
          plants: [...given.plants].reverse(),
          containers: [...given.containers].reverse(),
        };
        expect(await productionPlan(turned, trySolver)).toEqual(await productionPlan(given, trySolver));
      }),
      { seed: 61, numRuns: 60 },
    );
  });

  it('accounts for every plant that is missing, once', async () => {
    await fc.assert(
      fc.asyncProperty(facts, async (given) => {
        const { lines, tooLate, gaps, missingUnits, servedUnits } = await productionPlan(given, trySolver);
        const late = tooLate.reduce((sum, { wantedUnits }) => sum + wantedUnits, 0);
        expect(servedUnits + late + gaps.reduce((sum, { units }) => sum + units, 0)).toBe(missingUnits);
        for (const { wantedFor, plants } of [...lines, ...tooLate])
          expect(wantedFor.reduce((sum, row) => sum + row.servedUnits, 0)).toBe(plants);
      }),
      { seed: 62, numRuns: 80 },
    );
  });

  it('never covers more bench than there is, nor takes more seed than is left', async () => {
    await fc.assert(
      fc.asyncProperty(facts, async (given) => {
        const { lines, weeks, capacityCm2 } = await productionPlan(given, trySolver);
        if (capacityCm2 !== null)
          for (const { plannedCm2, standingCm2 } of weeks)
            expect(plannedCm2).toBeLessThanOrEqual(Math.max(0, capacityCm2 - standingCm2));
        for (const { id, gramsLeft } of given.sources) {
          const taken = lines.filter(({ sourceId }) => sourceId === id).reduce((sum, row) => sum + (row.grams ?? 0), 0);
          if (gramsLeft !== null) expect(taken).toBeLessThanOrEqual(gramsLeft + 1e-9);
        }
      }),
      { seed: 63, numRuns: 80 },
    );
  });

  it('starts nothing before today, and nothing in time that would not be ready', async () => {
    await fc.assert(
      fc.asyncProperty(facts, async (given) => {
        const { lines, tooLate } = await productionPlan(given, trySolver);
        for (const { state, startOn, readyOn, targetOn } of lines) {
          expect(startOn >= given.today).toBe(true);
          if (state === 'coming' || state === 'due') expect(readyOn <= targetOn).toBe(true);
        }
        for (const { readyOn, targetOn, servesOn } of tooLate)
          expect(readyOn > targetOn && (servesOn ?? readyOn) >= readyOn).toBe(true);
      }),
      { seed: 64, numRuns: 80 },
    );
  });
});
