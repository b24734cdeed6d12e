import type { BatchUnit, DemandKind, PlanGap, PlanLine, PlanWeek, PropagationMethod } from '@rootclock/domain';

/** Whom a batch is for, as people call it. */
export interface ForWhom {
  demandId: string;
  kind: DemandKind;
  /** Null for what is only expected. */
  orderId: string | null;
  orderCode: string | null;
  clientName: string | null;
  note: string;
  on: string;
  units: number;
  servedUnits: number;
  unitValue: number | null;
}

export interface ItemNames {
  plantId: string;
  plantCode: string;
  scientificName: string;
  vernacularName: string;
  containerId: string;
  containerCode: string;
  containerName: string;
}

/** What `propagation.startBatch` is sent for a batch of the plan, but for its id, its place and its day. */
export interface PlannedStart {
  plantId: string;
  sourceId: string;
  method: PropagationMethod;
  unit: BatchUnit;
  containerId: string | null;
  units: number | null;
  trays: number | null;
  seedsSown: number | null;
  targetContainerId: string;
  cautiousUnits: number;
  usualUnits: number;
  readyOn: string;
  protocolVersionId: string;
  seedGrams: number | null;
}

export interface PlanRow extends Omit<PlanLine, 'wantedFor'>, ItemNames {
  sourceCode: string;
  sourceWords: string;
  sownIntoName: string | null;
  cellsPerTray: number | null;
  start: PlannedStart;
  forWhom: ForWhom[];
}

export interface GapRow extends Omit<PlanGap, 'unitValue' | 'kind' | 'demandId' | 'on' | 'units'>, ItemNames {
  units: number;
  forWhom: ForWhom;
}

export interface PlanAnswer {
  today: string;
  confidence: number;
  /** The nursery's own setting. */
  usualConfidence: number;
  currency: string;
  /** What a plant counts as where nobody said what it is worth, in the smallest unit. */
  neutralValue: number;
  lines: PlanRow[];
  tooLate: PlanRow[];
  gaps: GapRow[];
  weeks: PlanWeek[];
  capacityCm2: number | null;
  missingUnits: number;
  servedUnits: number;
  /** By which share a plan that serves more within the bench area could exist at most; 0 where there is none. */
  within: number;
  /** What the plan was made from, so that an empty one says why it is empty. */
  counts: { orderLines: number; expected: number; supplies: number };
}

export interface OutlookWeek {
  startsOn: string;
  /** Plants that can go out in that week after all earlier demand was met, at the cautious and at the usual yield. */
  cautious: number;
  usual: number;
  orders: number;
  expected: number;
  /** Lacking at the cautious and at the usual yield. */
  shortCautious: number;
  shortUsual: number;
}

export interface OutlookItem extends ItemNames {
  demandUnits: number;
  supplyUnits: number;
}

export interface OutlookAnswer {
  today: string;
  items: OutlookItem[];
  /** Null where no item was chosen. */
  chosen: { item: ItemNames; weeks: OutlookWeek[] } | null;
}
