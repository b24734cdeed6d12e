import { afterAll, beforeAll, expect, it } from 'vitest';
import { planner } from '../../../apps/server/src/features/planning/plan/solver/planner.ts';
import { planFacts } from '../../bench/load/planning/plan-facts.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, type TestNursery } from '../../support/nursery.ts';

/** More than there are connections to the database. */
const PLANS = 12;
const IDLE_READS = 60;
/** A blocked process would answer one read when the plan is there, and none before. */
const LEAST_READS = 3;

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: Pick<TestNursery, 'as'>;
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database, { day: '2026-11-20' });
  nursery = await server.addNursery();
  // The thread starts with the first plan; what is measured is one that is warm.
  await nursery.as('viewer').planning.readPlan({});
});
afterAll(async () => {
  await planner.stop();
  await server.close();
  await database.drop();
});

const median = (values: readonly number[]) =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

async function timedRead(): Promise<number> {
  const started = performance.now();
  await nursery.as('viewer').stock.listLots({});
  return performance.now() - started;
}

it('reads are answered while a large plan is reckoned and more of them wait than there are connections', async () => {
  const idle: number[] = [];
  for (let read = 0; read < IDLE_READS; read += 1) idle.push(await timedRead());

  const plan = { isDone: false };
  const started = performance.now();
  const large = planner
    .ask(planFacts({ plants: 200, weeks: 52, seed: 2, capacityCm2: 2_900_000 }))
    .then(() => performance.now() - started)
    .finally(() => void (plan.isDone = true));
  const waiting = Array.from({ length: PLANS }, () => nursery.as('viewer').planning.readPlan({}));
  const during: number[] = [];
  while (!plan.isDone) during.push(await timedRead());
  const planMs = await large;
  await Promise.all(waiting);

  const figures = {
    planMs: Math.round(planMs),
    reads: during.length,
    idleMs: median(idle),
    duringMs: median(during),
    times: median(during) / median(idle),
    longestMs: Math.max(...during),
  };
  console.info('reads while a plan is reckoned:', JSON.stringify(figures));
  expect(during.length).toBeGreaterThanOrEqual(LEAST_READS);
  expect(figures.longestMs).toBeLessThan(planMs);
});
