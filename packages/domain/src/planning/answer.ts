import type { CalendarDate } from '../kernel/dates.ts';
import type { WindowOpening } from '../pot-life/windows.ts';
import type { StageKind } from '../propagation/protocol/stages.ts';
import type { BatchUnit, PropagationMethod } from '../propagation/words.ts';
import type { DemandKind, PlanItem } from './demand-facts.ts';
import type { UnmetReason } from './start/choice.ts';
import type { PlannedPotLife } from './start/pot-life.ts';
import type { StartState } from './start/timing.ts';

/** Whom a batch is for, and how much of what they lack it gives. */
export interface PlanFor {
  demandId: string;
  kind: DemandKind;
  on: CalendarDate;
  units: number;
  servedUnits: number;
  /** Null where nobody said what one is worth, and the neutral value stood in. */
  unitValue: number | null;
}

/** One batch to start. */
export interface PlanLine extends PlanItem {
  /** The same whenever the plan is reckoned from the same facts. */
  key: string;
  protocolId: string;
  versionId: string;
  label: string;
  method: PropagationMethod;
  state: StartState;
  startOn: CalendarDate;
  missedOn: CalendarDate | null;
  stages: { kind: StageKind; beginsOn: CalendarDate }[];
  targetOn: CalendarDate;
  readyOn: CalendarDate;
  usualReadyOn: CalendarDate;
  /** With `overdue` and `too-late`: the first day on which it can go out. */
  servesOn: CalendarDate | null;
  window: Pick<WindowOpening, 'opensOn' | 'closesOn'> | null;
  /** Plants wanted, and plants it gives at the confidence. */
  wantedUnits: number;
  plants: number;
  unit: BatchUnit;
  units: number;
  trays: number | null;
  /** Cells, pieces or seeds that are started. */
  counted: number;
  startContainerId: string | null;
  sownIntoId: string | null;
  seedsPerCell: number | null;
  seeds: number | null;
  sourceId: string;
  grams: number | null;
  gramsLeft: number | null;
  mediumLitres: number;
  potted: number;
  /** What may be expected of the batch, however few of it are wanted: at the confidence and at the mean share. */
  cautiousPlants: number;
  usualPlants: number;
  share: number;
  restsOn: { stage: StageKind; covers: StageKind[]; share: number; tried: number; batches: number }[];
  potLife: PlannedPotLife;
  /** The most it covers in any week. */
  benchCm2: number;
  benchFromOn: CalendarDate | null;
  benchUntilOn: CalendarDate | null;
  wantedFor: PlanFor[];
}

/** What no batch is planned for, and why. */
export interface PlanGap extends PlanItem {
  demandId: string;
  kind: DemandKind;
  on: CalendarDate;
  units: number;
  reason: UnmetReason;
  /** With `no-space`: the Mondays of the weeks without room for it. */
  fullWeeks: CalendarDate[];
  /** With `not-enough-seed`: what all of it takes and what is left, in grams. */
  grams: { needed: number; left: number } | null;
  unitValue: number | null;
}

export interface PlanWeek {
  startsOn: CalendarDate;
  standingCm2: number;
  plannedCm2: number;
}

export interface ProductionPlan {
  /** Batches to start, by day. Those that come too late for their day stand apart: they take no room in the plan. */
  lines: PlanLine[];
  tooLate: PlanLine[];
  gaps: PlanGap[];
  weeks: PlanWeek[];
  capacityCm2: number | null;
  /** Plants missing in all, and those that the lines give. */
  missingUnits: number;
  servedUnits: number;
  /** By which share a plan that serves more within the bench area could exist at most; 0 where there is none. */
  within: number;
}
