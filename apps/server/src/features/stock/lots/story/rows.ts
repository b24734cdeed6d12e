import type {
  CountKind,
  HoldReason,
  MonthDay,
  PlaceKind,
  PlantByState,
  PotLifeBasis,
  RootHabit,
} from '@rootclock/domain';

/** What stands where, as the lot's page shows it. */
export interface StandingRow {
  placeId: string;
  code: string;
  name: string;
  kind: PlaceKind;
  units: number;
  closedUntilAt: string | null;
  closedReason: string | null;
}

export interface StagedRow {
  lineId: string;
  orderId: string;
  orderCode: string;
  client: string;
  units: number;
}

export interface PromisedRow extends StagedRow {
  dueOn: string;
  pinned: boolean;
}

export interface HoldRow {
  id: string;
  reason: HoldReason;
  heldOn: string;
  releasedOn: string | null;
  releaseReason: string | null;
}

export interface KinRow {
  kind: 'lot' | 'batch';
  id: string;
  code: string;
  container: string | null;
  units: number;
}

/** The rule that binds, as data for a sentence. */
export interface BindingRule {
  id: string;
  basis: PotLifeBasis;
  span: string | null;
  lotId: string | null;
  plant: string | null;
  genus: string | null;
  rootHabit: RootHabit | null;
  container: string | null;
  standing: string;
  source: string | null;
  note: string;
}

/** What the lot's page needs in one row. */
export interface LotRow {
  id: string;
  code: string;
  plant: {
    id: string;
    code: string;
    scientificName: string;
    vernacularName: string;
    rootHabit: RootHabit;
    larvalHost: boolean;
    handling: string[];
    dormantMonths: number[];
    lastEmergenceMd: MonthDay | null;
  };
  source: {
    id: string;
    code: string;
    kind: string;
    provenance: string;
    seedZone: string | null;
    origin: string;
    gatheredOn: string | null;
    gatheredPrecision: string | null;
    vendor: string | null;
    pesticideStatement: string | null;
  };
  container: { id: string; code: string; name: string; kind: string; volumeMl: number | null; cells: number | null };
  pottedOn: string;
  pottedPrecision: string;
  confinedOn: string | null;
  confinedStanding: 'recorded' | 'assumed';
  containerOn: string | null;
  containerStanding: 'recorded' | 'assumed';
  readyOn: string | null;
  rootCheckedOn: string | null;
  countKind: CountKind;
  plantByOn: string | null;
  plantByState: PlantByState;
  limitOn: string | null;
  nextOpensOn: string | null;
  closedOn: string | null;
  note: string;
  rule: BindingRule | null;
  standing: StandingRow[];
  staged: StagedRow[];
  promised: PromisedRow[];
  holds: HoldRow[];
  parents: KinRow[];
  children: KinRow[];
  /** Sources that were taken from this lot as mother stock. */
  cuttingsOf: { id: string; code: string }[];
  noticeDays: number;
}

/** One end of a movement as people read it. */
export type EndRow =
  | { kind: 'place'; lotId: string | null; batchId: string | null; code: string; place: string }
  | { kind: 'staged'; lotId: string; code: string; order: string }
  | { kind: 'outside'; outside: string };

export interface EntryRow {
  id: string;
  version: number;
  kind: string;
  happenedOn: string;
  recordedAt: string;
  person: string | null;
  cause: string | null;
  note: string;
  details: Record<string, unknown>;
  reversesId: string | null;
  reversedBy: { id: string; happenedOn: string } | null;
  movements: { from: EndRow; to: EndRow; fromUnits: number; toUnits: number }[];
  observation: { kind: string; result: string | null; amount: number | null } | null;
  treatment: { product: string; reentryAt: string | null } | null;
  /** What a spring count found of this lot, at all its places together. */
  spring: { upUnits: number; deadUnits: number; notUpUnits: number } | null;
}
