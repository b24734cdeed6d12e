/** A line of the plan in words that several places say. */
import type { AppRouter } from '@rootclock/server/router';
import type { inferRouterOutputs } from '@trpc/server';
import { weekStart } from '@rootclock/domain';
import { startBatchLink } from '../../../lib/paths.ts';
import type { Messages } from '../../../messages/index.ts';

export type Plan = inferRouterOutputs<AppRouter>['planning']['readPlan'];
export type PlanRow = Plan['lines'][number];
export type GapRow = Plan['gaps'][number];

/** How much is started, as it is counted where it is done: whole trays where there are trays. */
export function amountOf(row: PlanRow, { plan: say }: Messages['planning']): string {
  if (row.unit === 'pack') return say.inPacks(row.units, row.counted);
  if (row.unit === 'piece') return say.pieces(row.units);
  if (row.trays === null) return say.cells(row.counted);
  return row.cellsPerTray === null ? say.inFlats(row.trays, row.counted) : say.inTrays(row.trays, row.counted);
}

/** The form that starts a batch, filled in as planned; the day is today's unless its season has not begun. */
export function linkOf({ start, startOn, state }: PlanRow) {
  const day = state === 'coming' ? null : startOn;
  const {
    plantId,
    protocolVersionId,
    sourceId,
    units,
    trays,
    seedsSown,
    seedGrams,
    targetContainerId,
    cautiousUnits,
    usualUnits,
    readyOn,
  } = start;
  return startBatchLink({
    plantId,
    protocolVersionId,
    sourceId,
    units,
    trays,
    seedsSown,
    seedGrams,
    targetContainerId,
    cautiousUnits,
    usualUnits,
    readyOn,
    day,
  });
}

export interface StartWeek {
  mondayOn: string;
  rows: PlanRow[];
}

/** Lines by the week in which they are to be started, in the order of the plan. */
export function byWeek(rows: readonly PlanRow[]): StartWeek[] {
  const weeks: StartWeek[] = [];
  for (const row of rows) {
    const mondayOn = weekStart(row.startOn);
    const week = weeks.find((each) => each.mondayOn === mondayOn);
    if (week) week.rows.push(row);
    else weeks.push({ mondayOn, rows: [row] });
  }
  return weeks;
}
