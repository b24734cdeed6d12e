// `npm run bench`: how fast a large nursery answers, measured on a generated one against the bare database.
import { allocationReport, pageOfAllocation } from './allocation-report.ts';
import { readArguments, type Wanted } from './arguments.ts';
import { startCluster, type Cluster } from './cluster.ts';
import { hostNow, loadNow, machineOf } from './machine.ts';
import { measureAllocation } from './measure/allocation.ts';
import { measurePlan } from './measure/plan.ts';
import { measurePromise, measureReplanning } from './measure/promises.ts';
import { measureReads } from './measure/reads.ts';
import { measureWrites } from './measure/writes.ts';
import { makeNursery, proveLaws } from './nursery.ts';
import { pageOf, type Report, reportOf } from './report.ts';

const startedAt = performance.now();
/** Progress goes to standard error: standard output belongs to the figures. */
const say = (line: string) =>
  console.error(`${((performance.now() - startedAt) / 1000).toFixed(0).padStart(5)} s  ${line}`);

const OPEN_LINES_A_LOT = 500 / 2000;

async function measure(wanted: Wanted, cluster: Cluster): Promise<Report> {
  const machine = await machineOf(cluster.url('postgres'), cluster.syncMs);
  const { lots, live, movements, seed } = wanted;
  const make = (name: string, share: number) => {
    const closedLots = Math.round((lots - live) * share);
    const size = {
      liveLots: live,
      closedLots,
      closedMoves: Math.round((movements / lots) * closedLots),
      movesEach: movements / lots,
      openLines: Math.round(live * OPEN_LINES_A_LOT),
      seed,
    };
    return makeNursery(cluster.url('postgres'), cluster.url, name, size, say);
  };
  const whole = await make('whole', 1);
  const tenth = await make('tenth', 0.1);
  say(`reading, ${wanted.rounds} times each way`);
  const reads = await measureReads(whole, tenth, wanted.rounds);
  say(`writing, ${wanted.seconds} s each way`);
  const writes = await measureWrites(whole, wanted.seconds, seed);
  say(`planning promises anew, ${wanted.seconds} s`);
  const promises = { ask: measurePromise(seed), replanning: await measureReplanning(whole, wanted.seconds, seed) };
  say('planning');
  const plan = await measurePlan(whole, seed);
  const allocation = await measureAllocation(seed, wanted.solverSeconds, say);
  say('proving the laws again');
  const provingAt = performance.now();
  const proved = await proveLaws(whole.ownerUrl);
  const laws = { proved, clean: true, secondsAfterWrites: (performance.now() - provingAt) / 1000 } as const;
  return reportOf({
    wanted,
    machine: { ...machine, loadAfter: loadNow() },
    nurseries: [whole, tenth],
    reads,
    writes,
    promises,
    plan,
    allocation,
    laws,
  });
}

function show<R>(report: R, page: (report: R) => string, json: boolean): void {
  if (json) {
    console.error(page(report));
    console.log(JSON.stringify(report, null, 2));
  } else console.log(page(report));
}

async function measureAll(wanted: Wanted): Promise<void> {
  const cluster = await startCluster(wanted.folder);
  try {
    show(await measure(wanted, cluster), pageOf, wanted.json);
  } finally {
    await cluster.stop();
  }
}

async function measureAllocationAlone({ seed, solverSeconds, json }: Wanted): Promise<void> {
  const host = hostNow();
  show(
    allocationReport({ seed, solverSeconds }, host, await measureAllocation(seed, solverSeconds, say)),
    pageOfAllocation,
    json,
  );
}

const wanted = readArguments(process.argv.slice(2));
try {
  await (wanted.only === 'allocation' ? measureAllocationAlone(wanted) : measureAll(wanted));
} catch (error) {
  // A missed aim is a figure; what could not be measured, or broke a law, is a failure.
  console.error(error);
  process.exitCode = 1;
}
