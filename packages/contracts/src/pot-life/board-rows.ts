import type {
  BatchUnit,
  HoldReason,
  PlantByState,
  PotBand,
  PotLifeBasis,
  RootHabit,
  Standing,
} from '@rootclock/domain';
import type { Page } from '../fields.ts';
import type { BOARD_FILTERS } from './board.ts';

/** The rule that binds, as data for a sentence. */
export interface BindingRule {
  ruleId: string;
  basis: PotLifeBasis;
  span: string | null;
  /** Whom the rule was written for; the most particular part is set. */
  reach: {
    lot: boolean;
    scientificName: string | null;
    genus: string | null;
    rootHabit: RootHabit | null;
    containerName: string | null;
  };
  standing: Standing;
  source: string | null;
}

/** A lot, or a batch in cells, on the board. */
export interface BoardRow {
  kind: 'lot' | 'batch';
  id: string;
  code: string;
  plantId: string;
  scientificName: string;
  vernacularName: string;
  containerName: string | null;
  places: { placeId: string; code: string; units: number }[];
  /** What is counted: plants of a lot, or the unit of the batch. */
  unit: 'plant' | BatchUnit;
  onHandUnits: number;
  stagedUnits: number;
  reservedUnits: number;
  /** What nobody was promised: it declines unless somebody looks. Nothing of held stock. */
  freeUnits: number;
  holds: HoldReason[];
  plantByOn: string | null;
  state: PlantByState;
  /** The last day the binding rule allows by itself, before the windows pull it back. */
  limitOn: string | null;
  nextOpensOn: string | null;
  /** Since when the binding rule counts; `clockAssumed` when that day is a guess on the early side. */
  clockOn: string | null;
  clockAssumed: boolean;
  rule: BindingRule | null;
  window: { opensMd: string; closesMd: string } | null;
  readyOn: string | null;
  /** Null until the root ball was checked and held. */
  rootCheckedOn: string | null;
  band: PotBand;
  daysLeft: number | null;
  /** How much of the time from clock to plant-by day has passed, 0 to 1; null without a limit. */
  share: number | null;
  /** In its dormant months today: it looks dead and is not. */
  dormant: boolean;
  lastEmergenceMd: string | null;
  /** Whether a larger pot helps: only the container's clock starts anew, the confined one goes on. */
  potUpHelps: boolean;
}

/** Units whose plant-by day falls in the week that begins on `weekOn` (a Monday). */
export interface BoardWeek {
  weekOn: string;
  units: number;
  freeUnits: number;
}

export interface Board extends Page<BoardRow> {
  weeks: BoardWeek[];
  windows: { opensMd: string; closesMd: string }[];
  /** How many lots and batches lie in each band or state, whatever is filtered. */
  counts: Record<(typeof BOARD_FILTERS)[number], number>;
  noticeDays: number;
  today: string;
}
