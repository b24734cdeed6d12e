import type { CalendarDate } from '../../kernel/dates.ts';
import type { MonthDay } from '../../kernel/month-days.ts';
import type { OrderKind } from '../../orders/order-words.ts';
import type { StageKind, StagePlan } from '../../propagation/protocol/stages.ts';
import type { BatchUnit, PropagationMethod } from '../../propagation/words.ts';

interface Standing {
  id: string;
  code: string;
  /** The plant's scientific name. */
  plantName: string;
  /** Where it stands, in no order. */
  placeIds: readonly string[];
  /** What stands, in the batch's unit or in plants. */
  units: number;
  /** Months 1 to 12 in which the plant is dormant. */
  dormantMonths: readonly number[];
  /** By when it must have left its cells or pots; null where nothing limits it, or nobody is to plant it. */
  plantByOn: CalendarDate | null;
}

/** A batch that is open. */
export interface TaskBatch extends Standing {
  method: PropagationMethod;
  unit: BatchUnit;
  startedOn: CalendarDate;
  /** The stages of its protocol; none where it was started without one. */
  stages: readonly StagePlan[];
  /** The stage it is in and since when; null without a protocol. */
  stage: { position: number; begunOn: CalendarDate } | null;
  secondWinterOn: CalendarDate | null;
  /** The last count that stands: its day and what it found. */
  lastCount: { on: CalendarDate; units: number } | null;
}

/** A lot that is open. */
export interface TaskLot extends Standing {
  pottedOn: CalendarDate;
  /** The stages of the protocol of the batch that it was potted from; none where there is none. */
  stages: readonly StagePlan[];
  /** When somebody expects it to be ready. */
  readyOn: CalendarDate | null;
  /** Whether its root ball was found to hold. */
  rootChecked: boolean;
  /** The last day on which its root ball was looked at, whatever was found, as far as that was within LOOK_AGAIN_DAYS. */
  lookedAtOn: CalendarDate | null;
}

/** Days of the year of a place in use. */
export interface TaskPlace {
  id: string;
  code: string;
  coverMd: MonthDay | null;
  baitMd: MonthDay | null;
  uncoverMd: MonthDay | null;
}

/** A garden order that is open, with what of it is yet to be fetched and what stands ready to go. */
export interface TaskOrder {
  id: string;
  code: string;
  kind: OrderKind;
  dueOn: CalendarDate;
  toPullUnits: number;
  stagedUnits: number;
  /** Where the lots stand that are to be pulled. */
  placeIds: readonly string[];
}

/** What was planted for one order on one day and stands. */
export interface TaskPlanting {
  orderId: string;
  orderCode: string;
  plantedOn: CalendarDate;
  units: number;
  plants: readonly { name: string; dormantMonths: readonly number[]; lastEmergenceMd: MonthDay | null }[];
}

/** Plants of a lot at a place that the last spring count found not yet up, and that still stand there. */
export interface TaskSpringCount {
  lotId: string;
  code: string;
  plantName: string;
  placeId: string;
  countedOn: CalendarDate;
  notUpUnits: number;
  /** The last day on which they may still come up. */
  untilOn: CalendarDate;
}

/** A viability test whose replicates disagree, with none after it. */
export interface TaskTest {
  sourceId: string;
  sourceCode: string;
  plantName: string;
  testedOn: CalendarDate;
}

/** Said to be done, though no entry says so. */
export interface TaskTick {
  key: string;
  doneOn: CalendarDate;
}

/** All that tasks are reckoned from. */
export interface TaskFacts {
  today: CalendarDate;
  /** Days before a plant-by day from which notice is given. */
  noticeDays: number;
  batches: readonly TaskBatch[];
  lots: readonly TaskLot[];
  places: readonly TaskPlace[];
  orders: readonly TaskOrder[];
  plantings: readonly TaskPlanting[];
  springCounts: readonly TaskSpringCount[];
  tests: readonly TaskTest[];
  ticks: readonly TaskTick[];
}

/** What a sentence about a task says beyond its kind. */
export interface TaskDetails {
  /** The stage that is over its time, or that the batch is in. */
  stage?: StageKind;
  /** The stage that begins with the task, and its place among the protocol's stages. */
  next?: StageKind;
  nextPosition?: number;
  /** Since when: the last count, the potting, the planting, the test. */
  sinceOn?: CalendarDate;
  /** Plants that look dead thirty days after planting and may not be, so that the visit waits for their last-emergence day. */
  dormant?: string[];
}
