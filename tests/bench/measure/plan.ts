// The plan of a large nursery through HTTP, with less bench than it would take, and how reads fare while it is reckoned.
import type { ProductionPlan } from '@rootclock/domain';
import pg from 'pg';
import { loadPlanning, measureBenches, type PlannedDemand } from '../load/planning/planning.ts';
import type { Nursery } from '../nursery.ts';
import { serve, type Serving } from '../serving.ts';
import { median, spread, type Spread } from './figures.ts';

export const PLAN_PLANTS = 200;
export const PLAN_WEEKS_WANTED = 52;
export const MOST_PLAN_MS = 1000;
/** Of what all of it would take in its fullest week, so that the solver has something to decide. */
const BENCH_SHARE = 0.7;
const TIMES = 9;
const READS = 100;

export interface PlanFigures {
  demand: PlannedDemand;
  lines: number;
  gaps: number;
  within: number;
  /** With the thread still to be started. */
  firstMs: number;
  http: Spread;
  /** Reads of the stock table, alone and while plans are reckoned. */
  idleMs: number;
  duringMs: number;
  timesSlower: number;
  met: boolean;
}

type Plan = Pick<ProductionPlan, 'weeks' | 'within'> & { lines: unknown[]; gaps: unknown[] };

async function readPlan(serving: Serving): Promise<{ ms: number; plan: Plan }> {
  const started = performance.now();
  const body = await serving.read('planning.readPlan', {});
  return { ms: performance.now() - started, plan: (JSON.parse(body) as { result: { data: Plan } }).result.data };
}

async function readMs(serving: Serving): Promise<number> {
  const started = performance.now();
  await serving.read('stock.listLots', {});
  return performance.now() - started;
}

export async function measurePlan(nursery: Nursery, seed: number): Promise<PlanFigures> {
  const owner = new pg.Client({ connectionString: nursery.ownerUrl });
  await owner.connect();
  const serving = await serve(nursery.url, nursery.session);
  try {
    const demand = await loadPlanning(owner, nursery.nurseryId, {
      plants: PLAN_PLANTS,
      weeks: PLAN_WEEKS_WANTED,
      seed,
    });
    await owner.query('ANALYZE');
    const first = await readPlan(serving);
    const fullest = Math.max(...first.plan.weeks.map(({ plannedCm2, standingCm2 }) => plannedCm2 + standingCm2));
    await measureBenches(owner, nursery.nurseryId, (fullest / 10_000) * BENCH_SHARE);
    const { plan } = await readPlan(serving);
    const times: number[] = [];
    for (let time = 0; time < TIMES; time += 1) times.push((await readPlan(serving)).ms);

    const idle: number[] = [];
    for (let read = 0; read < READS; read += 1) idle.push(await readMs(serving));
    const reckoning = { isDone: false };
    const plans = Promise.all(Array.from({ length: 4 }, () => readPlan(serving))).finally(
      () => void (reckoning.isDone = true),
    );
    const during: number[] = [];
    while (!reckoning.isDone) during.push(await readMs(serving));
    await plans;
    const http = spread(times);
    return {
      demand,
      lines: plan.lines.length,
      gaps: plan.gaps.length,
      within: plan.within,
      firstMs: first.ms,
      http,
      idleMs: median(idle),
      duringMs: median(during),
      timesSlower: median(during) / median(idle),
      met: http.medianMs <= MOST_PLAN_MS,
    };
  } finally {
    await serving.stop();
    await owner.end();
  }
}
