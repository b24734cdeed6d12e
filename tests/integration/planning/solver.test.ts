import fc from 'fast-check';
import type { Programme, SolveProgramme } from '@rootclock/domain';
import { productionPlan } from '@rootclock/domain';
import { createSolver } from '@rootclock/server/features/planning/plan/solver/highs';
import { Planner } from '@rootclock/server/features/planning/plan/solver/planner';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { planFacts } from '../../bench/load/planning/plan-facts.ts';

let solve: SolveProgramme;
beforeAll(async () => {
  solve = await createSolver();
});

/** All ways there are, for programmes of a handful of groups. */
function most({ groups, limits }: Programme): number {
  const walk = (at: number, left: readonly number[]): number => {
    const group = groups[at];
    if (group === undefined) return 0;
    const ways = group.map(({ worth, takes }) => {
      const after = left.map((room, limit) => room - (takes.find((take) => take.limit === limit)?.amount ?? 0));
      return after.every((room) => room >= 0) ? worth + walk(at + 1, after) : 0;
    });
    return Math.max(walk(at + 1, left), ...ways);
  };
  return walk(0, limits);
}

const programmes: fc.Arbitrary<Programme> = fc
  .integer({ min: 1, max: 4 })
  .chain((count) => {
    const takes = fc
      .subarray(Array.from({ length: count }, (_, limit) => limit))
      .chain((rows) =>
        fc.tuple(...rows.map((limit) => fc.integer({ min: 1, max: 5000 }).map((amount) => ({ limit, amount })))),
      );
    const group = fc.array(fc.record({ worth: fc.integer({ min: 1, max: 100_000 }), takes }), {
      minLength: 1,
      maxLength: 3,
    });
    return fc.record({
      groups: fc.array(group, { minLength: 1, maxLength: 6 }),
      limits: fc.array(fc.integer({ min: 0, max: 12_000 }), { minLength: count, maxLength: count }),
    });
  })
  .map(({ groups, limits }) => ({
    limits,
    groups: groups.map((group, at) => group.map((choice, nth) => ({ ...choice, name: `x${at}_${nth}` }))),
  }));

describe('the solver', () => {
  it('finds the most that any choice is worth, within the limits', async () => {
    await fc.assert(
      fc.asyncProperty(programmes, async (programme) => {
        const { chosen, within } = await solve(programme);
        const taken = programme.groups.map((group) => group.filter(({ name }) => chosen.includes(name)));
        expect(taken.every((group) => group.length <= 1)).toBe(true);
        for (const [limit, room] of programme.limits.entries())
          expect(
            taken.flat().reduce((sum, { takes }) => sum + (takes.find((take) => take.limit === limit)?.amount ?? 0), 0),
          ).toBeLessThanOrEqual(room);
        expect([taken.flat().reduce((sum, { worth }) => sum + worth, 0), within]).toEqual([most(programme), 0]);
      }),
      { seed: 71, numRuns: 150 },
    );
  });
  it('chooses nothing where there is nothing to choose', async () =>
    expect(await solve({ groups: [], limits: [] })).toEqual({ chosen: [], within: 0 }));
});

describe('a large plan with too little room', () => {
  it('is the same each time, keeps within the benches, and says how far from the best it can be', async () => {
    const facts = planFacts({ plants: 60, weeks: 52, seed: 5, capacityCm2: 900_000 });
    const plan = await productionPlan(facts, solve);
    expect(
      await productionPlan(
        { ...facts, demands: [...facts.demands].reverse(), protocols: [...facts.protocols].reverse() },
        solve,
      ),
    ).toEqual(plan);
    expect(plan.gaps.some(({ reason }) => reason === 'no-space')).toBe(true);
    for (const { plannedCm2, standingCm2 } of plan.weeks)
      expect(plannedCm2).toBeLessThanOrEqual(Math.max(0, 900_000 - standingCm2));
    expect(plan.within).toBeLessThan(0.05);
  });
});

describe('the planning thread', () => {
  const planners: Planner[] = [];
  const planner = (...args: ConstructorParameters<typeof Planner>) => {
    const made = new Planner(...args);
    planners.push(made);
    return made;
  };
  afterAll(() => Promise.all(planners.map((each) => each.stop())));
  const small = planFacts({ plants: 3, weeks: 52, seed: 1, capacityCm2: null });

  it('answers what is asked one after the other, as the arithmetic does without it', async () => {
    const asked = planner();
    const [first, second] = await Promise.all([
      asked.ask(small),
      asked.ask(planFacts({ plants: 2, weeks: 52, seed: 2, capacityCm2: null })),
    ]);
    expect(first).toEqual(await productionPlan(small, solve));
    expect(second).toEqual(
      await productionPlan(planFacts({ plants: 2, weeks: 52, seed: 2, capacityCm2: null }), solve),
    );
  });

  it('refuses what takes too long, and answers the next one by a new thread', async () => {
    const hasty = planner(1);
    await expect(hasty.ask(small)).rejects.toMatchObject({ code: 'plan-takes-too-long' });
    const patient = planner();
    expect(await patient.ask(small)).toMatchObject({ gaps: [] });
    await patient.stop();
    expect(await patient.ask(small)).toMatchObject({ gaps: [] });
  });

  it('says what went wrong with facts that cannot be, and goes on', async () => {
    const asked = planner();
    await expect(asked.ask({ ...small, confidence: 0.1 })).rejects.toThrow(/confidence/);
    expect(await asked.ask(small)).toMatchObject({ gaps: [] });
  });
});
