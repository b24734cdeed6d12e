// The figures of allocation, as a part of the report and by themselves.
import { type Host, loadNow } from './machine.ts';
import { type AllocationFigures, type AllocationRun, LEAST_TIMES_FASTER, MOST_GROWTH } from './measure/allocation.ts';
import { type Aim, aimLines, shortened, table } from './page.ts';

export function allocationAims({ runs, growth, timesFasterInTheMiddle, met }: AllocationFigures): Aim[] {
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
  ];
}

const timesOf = (one: AllocationRun['sequence']): string =>
  one.ended ? `${one.timesLonger.toFixed(1)}${one.equal ? '' : ' DIFFERS'}` : `> ${(one.ms / 1000).toFixed(0)} s`;

export const allocationPage = ({ runs, growth }: AllocationFigures): string[] => [
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
