// The figures as one object for programs, and as a page for people.
import type { Wanted } from './arguments.ts';
import { allocationAims, allocationPage } from './allocation-report.ts';
import type { Machine } from './machine.ts';
import type { AllocationFigures } from './measure/allocation.ts';
import { type Aim, aimLines, shortened, table } from './page.ts';
import { MOST_PLAN_MS, type PlanFigures } from './measure/plan.ts';
import { MOST_PROMISE_MS, type PromiseFigures, type ReplanFigures } from './measure/promises.ts';
import {
  MOST_BARE_BOARD_MS,
  MOST_MORE_MS,
  MOST_TIMES,
  MOST_TIMES_LONGER_HISTORY,
  type ReadFigures,
} from './measure/reads.ts';
import { LEAST_A_SECOND, MOST_TIMES_BARE, MOST_P95_MS, type WriteFigures } from './measure/writes.ts';
import type { Nursery } from './nursery.ts';

export interface Report {
  options: Omit<Wanted, 'json' | 'folder' | 'only'>;
  machine: Machine & { loadAfter: number };
  databases: { name: string; rows: Record<string, number>; megabytes: number; seconds: Record<string, number> }[];
  reads: ReadFigures[];
  writes: WriteFigures;
  promises: { ask: PromiseFigures; replanning: ReplanFigures };
  plan: PlanFigures;
  allocation: AllocationFigures;
  laws: { proved: number; clean: true; secondsAfterWrites: number };
  aims: Aim[];
}

function aimsOf({
  reads,
  writes,
  promises,
  plan,
  allocation,
}: Pick<Report, 'reads' | 'writes' | 'promises' | 'plan' | 'allocation'>): Aim[] {
  return [
    ...reads.flatMap((figures) => [
      {
        aim: `${figures.read}: median at most ${MOST_TIMES} times the bare SQL, or ${MOST_MORE_MS} ms more`,
        measured: figures.times,
        met: figures.met.nearBare,
      },
      ...(figures.met.bareIsQuick === null
        ? []
        : [
            {
              aim: `${figures.read}: bare SQL in less than ${MOST_BARE_BOARD_MS} ms`,
              measured: figures.bare.medianMs,
              met: figures.met.bareIsQuick,
            },
          ]),
      {
        aim: `${figures.read}: at most ${MOST_TIMES_LONGER_HISTORY} times as long as with a tenth of the closed history`,
        measured: figures.timesTenth,
        met: figures.met.asShortHistory,
      },
    ]),
    {
      aim: `stock commands: at least ${LEAST_A_SECOND} acknowledged a second with ${writes.clients} clients`,
      measured: writes.http.aSecond,
      met: writes.met.aSecond,
    },
    {
      aim: `stock commands: at most ${MOST_TIMES_BARE} times as long as the bare SQL`,
      measured: writes.ratio,
      met: writes.met.nearBare,
    },
    {
      aim: `stock commands: 95 % answered in less than ${MOST_P95_MS} ms`,
      measured: writes.http.p95Ms,
      met: writes.met.p95,
    },
    {
      aim: `plan for ${plan.demand.plants} plants over ${plan.demand.weeks} weeks: median at most ${MOST_PLAN_MS} ms`,
      measured: plan.http.medianMs,
      met: plan.met,
    },
    {
      aim: `promise at ${promises.ask.supplies} lots and ${promises.ask.lines} lines: 95 % answered in less than ${MOST_PROMISE_MS} ms`,
      measured: promises.ask.p95Ms,
      met: promises.ask.met,
    },
    ...allocationAims(allocation),
  ];
}

export interface Measured {
  wanted: Wanted;
  machine: Report['machine'];
  nurseries: readonly Nursery[];
  reads: ReadFigures[];
  writes: WriteFigures;
  promises: Report['promises'];
  plan: PlanFigures;
  allocation: AllocationFigures;
  laws: Report['laws'];
}

export function reportOf({
  wanted,
  machine,
  nurseries,
  reads,
  writes,
  promises,
  plan,
  allocation,
  laws,
}: Measured): Report {
  const { json: _json, folder: _folder, only: _only, ...options } = wanted;
  const databases = nurseries.map(({ name, rows, bytes, seconds }) => ({
    name,
    rows,
    megabytes: bytes / 2 ** 20,
    seconds,
  }));
  return shortened({
    options,
    machine,
    databases,
    reads,
    writes,
    promises,
    plan,
    allocation,
    laws,
    aims: aimsOf({ reads, writes, promises, plan, allocation }),
  });
}

export function pageOf({ machine, databases, reads, writes, promises, plan, allocation, laws, aims }: Report): string {
  return [
    `${machine.cores} cores, ${machine.processor}, ${machine.memoryGb} GB; node ${machine.node}, PostgreSQL ${machine.postgres}; a page is on disk in ${machine.syncMs} ms; load ${machine.loadBefore} before, ${machine.loadAfter} after`,
    '',
    'Databases',
    ...table(
      ['', 'lots', 'movements', 'entries', 'MB', 'COPY s', 'keys s', 'vacuum s', 'first day s', 'laws s'],
      databases.map(({ name, rows, megabytes, seconds }) => [
        name,
        String(rows.lot),
        String(rows.movement),
        String(rows.entry),
        megabytes.toFixed(0),
        seconds.load ?? 0,
        seconds.keys ?? 0,
        seconds.vacuum ?? 0,
        seconds.firstDay ?? 0,
        seconds.laws ?? 0,
      ]),
    ),
    '',
    'Reads, milliseconds (median, 95 %)',
    ...table(
      ['', 'HTTP', '', 'bare SQL', '', 'more', 'times', 'HTTP, a tenth', 'times', 'bare, a tenth', 'times'],
      reads.map((r) => [
        r.read,
        r.http.medianMs,
        r.http.p95Ms,
        r.bare.medianMs,
        r.bare.p95Ms,
        r.moreMs,
        r.times,
        r.httpTenth.medianMs,
        r.timesTenth,
        r.bareTenth.medianMs,
        r.bareTimesTenth,
      ]),
    ),
    '',
    `Stock commands, ${writes.clients} at once`,
    ...table(
      ['', 'a second', 'median ms', '95 % ms', 'times'],
      [
        ['HTTP', writes.http.aSecond, writes.http.medianMs, writes.http.p95Ms, 1],
        ['bare SQL', writes.bare.aSecond, writes.bare.medianMs, writes.bare.p95Ms, writes.ratio],
      ],
    ),
    '',
    `Promises: an answer while typing ${promises.ask.medianMs.toFixed(1)} ms (95 % ${promises.ask.p95Ms.toFixed(1)}) at ${promises.ask.supplies} lots and ${promises.ask.lines} lines`,
    `  counts of promised lots, ${promises.replanning.clients} at once: ${promises.replanning.aSecond.toFixed(0)} a second, median ${promises.replanning.medianMs.toFixed(0)} ms (95 % ${promises.replanning.p95Ms.toFixed(0)})`,
    '',
    `Plan: ${plan.lines} batches for ${plan.demand.demands} needs of ${plan.demand.plants} plants over ${plan.demand.weeks} weeks, ${plan.gaps} left out; at most ${(plan.within * 100).toFixed(2)} % from the best`,
    `  first ${plan.firstMs.toFixed(0)} ms, then ${plan.http.medianMs.toFixed(0)} ms (95 % ${plan.http.p95Ms.toFixed(0)}); the stock table meanwhile ${plan.timesSlower.toFixed(2)} times as long (${plan.idleMs.toFixed(2)} ms alone, ${plan.duringMs.toFixed(2)} ms)`,
    '',
    ...allocationPage(allocation),
    '',
    `Laws: all ${laws.proved} hold after the load, and after the commands (${laws.secondsAfterWrites.toFixed(1)} s)`,
    '',
    ...aimLines(aims),
  ].join('\n');
}
