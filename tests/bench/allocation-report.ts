// The figures of allocation, as a part of the report and by themselves.
import { type Host, loadNow } from './machine.ts';
import { type AllocationFigures, type AllocationRun, LEAST_TIMES_FASTER, MOST_GROWTH } from './measure/allocation.ts';
import { MOST_CHECK_MS } from './measure/promise-check.ts';
import { type Aim, aimLines, shortened, table } from './page.ts';

export function allocationAims({ runs, growth, timesFasterInTheMiddle, promiseCheck, met }: AllocationFigures): Aim[] {
  const unequal = runs
    .flatMap(({ sequence, penaltyOnly }) => [sequence, penaltyOnly])
    .filter((one) => one.ended && !one.equal).length;
  return [
    { aim: 'allocation: goals that differ from those of HiGHS', measured: unequal, met: met.totals },
    {
      aim: `allocation of 2,000 lots to 500 lines: at least ${LEAST_TIMES_FASTER} times faster than HiGHS solving the goals in sequence`,
      measured: timesFasterInTheMiddle,
      met: met.timesFaster,
    },
    {
      aim: `allocation in bounded parts: at most ${MOST_GROWTH} times as long for ten times the lots and lines`,
      measured: Math.max(...growth.filter(({ shape }) => shape === 'parts').map(({ times }) => times)),
      met: met.growth,
    },
    {
      aim: `promise check among 500 linked lines and 2,000 lots: 95 % within ${MOST_CHECK_MS} ms of the processor`,
      measured: promiseCheck.cpu.p95Ms,
      met: promiseCheck.met,
    },
  ];
}

const timesOf = (one: AllocationRun['sequence']): string =>
  one.ended ? `${one.timesLonger.toFixed(1)}${one.equal ? '' : ' DIFFERS'}` : `> ${(one.ms / 1000).toFixed(0)} s`;

export const allocationPage = ({ runs, growth, promiseCheck }: AllocationFigures): string[] => [
  'Allocation, milliseconds of the processor; HiGHS in times of that',
  ...table(
    ['', 'lots', 'lines', 'ranks', 'arcs a line', 'ms', 'cpu ms', 'HiGHS sequence', 'solves', 'HiGHS penalty only'],
    runs.map(({ shape, supplies, lines, ranks, arcsALine, own, sequence, penaltyOnly }) => [
      shape,
      String(supplies),
      String(lines),
      String(ranks),
      arcsALine,
      own.ms,
      own.cpuMs,
      timesOf(sequence),
      sequence.ended ? String(sequence.solves) : '',
      timesOf(penaltyOnly),
    ]),
  ),
  ...growth.map(
    ({ shape, ranks, times }) =>
      `  ten times the lots and lines, ${shape}, ranks: ${ranks}: ${times.toFixed(2)} times as long`,
  ),
  `  promise check among ${promiseCheck.lines} linked lines: ${promiseCheck.medianMs.toFixed(1)} ms, 95 % within ${promiseCheck.p95Ms.toFixed(1)} (of the processor ${promiseCheck.cpu.medianMs.toFixed(1)} and ${promiseCheck.cpu.p95Ms.toFixed(1)})`,
];

export interface AllocationReport {
  options: { seed: number; solverSeconds: number };
  machine: Host & { loadAfter: number };
  allocation: AllocationFigures;
  aims: Aim[];
}

export const allocationReport = (
  options: AllocationReport['options'],
  machine: Host,
  allocation: AllocationFigures,
): AllocationReport =>
  shortened({ options, machine: { ...machine, loadAfter: loadNow() }, allocation, aims: allocationAims(allocation) });

export const pageOfAllocation = ({ machine, allocation, aims }: AllocationReport): string =>
  [
    `${machine.cores} cores, ${machine.processor}, ${machine.memoryGb} GB; node ${machine.node}; load ${machine.loadBefore} before, ${machine.loadAfter} after`,
    '',
    ...allocationPage(allocation),
    '',
    ...aimLines(aims),
  ].join('\n');
