import { describe, expect, it } from 'vitest';
import { productionPlan } from './plan.ts';
import { chanceFrom } from './sample-chance.ts';
import { demandOf, factsOf, known, noSolver, protocolOf, stage } from './sample-facts.ts';
import type { PlanPassing } from './start/facts.ts';

/** Plants are followed one by one through the stages, batch after batch; sowing them says how often enough of them get through. */
const DRAWS = 10_000;
/** Three standard errors of a share of 10,000 draws. */
const within = (share: number) => 3 * Math.sqrt((share * (1 - share)) / DRAWS);

const KINDS = ['emergence', 'growing-on', 'hardening'] as const;
const planOf = async (passing: readonly PlanPassing[], wanted: number, confidence: number) => {
  const stages = KINDS.map((kind) => stage(kind, 30, passing.find((row) => row.stage === kind)?.share ?? 1));
  // Pots one by one, so that no whole tray adds to the sureness that was asked for.
  const protocol = protocolOf({
    method: 'division',
    startUnit: 'piece',
    startContainerId: null,
    seedsPerCell: null,
    plan: { stages, dormantMonths: [] },
    passing,
  });
  const { lines } = await productionPlan(
    factsOf({
      confidence,
      demands: [demandOf({ units: wanted })],
      protocols: [protocol],
      sources: [{ ...factsOf().sources[0]!, kind: 'mother-plants' }],
    }),
    noSolver,
  );
  return lines[0]!;
};

/** The share of draws in which at least `wanted` of `started` get through all stages; the share of each stage may itself be drawn once a batch. */
function simulate(passing: readonly PlanPassing[], started: number, wanted: number, seed: number): number {
  const chance = chanceFrom(seed);
  let met = 0;
  for (let draw = 0; draw < DRAWS; draw += 1) {
    let alive = started;
    for (const { share, shapes } of passing)
      alive = chance.binomial(alive, shapes === null ? share : chance.beta(shapes.alpha, shapes.beta));
    if (alive >= wanted) met += 1;
  }
  return met / DRAWS;
}

const learned = (rows: readonly { stage: (typeof KINDS)[number]; alpha: number; beta: number }[]): PlanPassing[] =>
  rows.map(({ stage: kind, alpha, beta }) => ({
    stage: kind,
    covers: [kind],
    share: alpha / (alpha + beta),
    tried: 0,
    batches: 0,
    shapes: { alpha, beta },
  }));

const KNOWN = known([
  { kind: 'emergence', share: 0.7 },
  { kind: 'growing-on', share: 0.9 },
  { kind: 'hardening', share: 0.98 },
]);
/** A protocol's figures worth twenty plants each, and the same with some hundred counted beside them. */
const BELIEVED = learned([
  { stage: 'emergence', alpha: 14, beta: 6 },
  { stage: 'growing-on', alpha: 18, beta: 2 },
  { stage: 'hardening', alpha: 19.6, beta: 0.4 },
]);
const COUNTED = learned([
  { stage: 'emergence', alpha: 224, beta: 96 },
  { stage: 'growing-on', alpha: 180, beta: 20 },
  { stage: 'hardening', alpha: 196, beta: 4 },
]);

describe.each([
  ['known', KNOWN],
  ['counted', COUNTED],
  ['only believed', BELIEVED],
] as const)('with shares that are %s', (_, passing) => {
  it.each([
    [40, 0.5],
    [40, 0.8],
    [40, 0.9],
    [120, 0.9],
    [120, 0.95],
  ])('enough of %i are there at %d of the draws', async (wanted, confidence) => {
    const line = await planOf(passing, wanted, confidence);
    const share = simulate(passing, line.units, wanted, wanted * 1000 + confidence * 100);
    expect(share).toBeGreaterThan(confidence - within(confidence));
  });
  it('is no more than is needed: with one unit fewer the sureness is missed, up to sampling', async () => {
    const line = await planOf(passing, 40, 0.9);
    expect(simulate(passing, line.units - 1, 40, 77)).toBeLessThan(0.9 + within(0.9));
  });
});
