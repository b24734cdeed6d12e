import type { OrderKind, PlantByState, PlantingWindow } from '@rootclock/domain';

/** An open line as far as its filling is concerned. */
export interface ScopeLine {
  id: string;
  orderId: string;
  orderCode: string;
  orderKind: OrderKind;
  clientName: string;
  siteName: string | null;
  region: string | null;
  leadDays: number;
  rank: number;
  dueOn: string;
  plantId: string;
  scientificName: string;
  containerCode: string;
  /** Of the container asked for: where it has cells, the line takes whole trays of so many and nothing else. */
  cells: number | null;
  units: number;
  stagedUnits: number;
  deliveredUnits: number;
  seedZone: string | null;
  wildType: boolean;
  untreated: boolean;
  /** The order takes only what is native to the region of its site. */
  nativesOnly: boolean;
  /** The item asked for at penalty 0, then its alternatives. */
  accepts: { item: string; penalty: number }[];
  /** Lots and batches that a person released from this line. */
  refusedIds: string[];
}

/** A lot or batch whose item lines of the scope accept. */
export interface ScopeSupply {
  id: string;
  kind: 'lot' | 'batch';
  code: string;
  item: string;
  plantId: string;
  scientificName: string;
  containerId: string;
  containerCode: string;
  containerMl: number | null;
  /** Where its container has cells, whole trays of so many can be promised. */
  cells: number | null;
  /** On hand at places that may be promised from, or a batch's cautious yield. */
  units: number;
  /** On hand at quarantine places: there, but no supply. */
  quarantinedUnits: number;
  held: boolean;
  /** Null where nobody knows yet when its root balls will hold: then it serves nobody. */
  readyOn: string | null;
  rootChecked: boolean;
  plantByOn: string | null;
  plantByState: PlantByState;
  limitOn: string | null;
  /** The day the clock of the rule that binds began. */
  clockOn: string | null;
  seedZone: string | null;
  origin: string;
  isCultivar: boolean;
  /** Regions to which the plant is known to be native. */
  nativeRegions: string[];
  sourceKind: string;
  pesticideStatement: string | null;
  /** Some treatment of it, or of what it came from, stands in the ledger. */
  treated: boolean;
}

/** A stored reservation. Its line or its supply may have left the scope: then it is given up. */
export interface ScopeReservation {
  lineId: string;
  supplyId: string;
  supplyKind: 'lot' | 'batch';
  units: number;
  pinned: boolean;
}

/** Everything that has to be looked at together: lines and supplies that are linked by the items they share. */
export interface Scope {
  today: string;
  horizonOn: string;
  lines: ScopeLine[];
  supplies: ScopeSupply[];
  reservations: ScopeReservation[];
  /** Windows of the regions in which sites of the scope lie, together with those for everywhere. */
  windows: PlantingWindow[];
  /** Lots and batches that gave plants to others in the command that is planned for, its reversals included. */
  heirs: { fromId: string; toId: string }[];
}

export const itemOf = (plantId: string, containerId: string) => `${plantId}@${containerId}`;

/** Units a line still wants: not staged, not planted, not handed over. Never negative, since more may have been planted than was asked for. */
export const openUnits = (line: Pick<ScopeLine, 'units' | 'stagedUnits' | 'deliveredUnits'>) =>
  Math.max(0, line.units - line.stagedUnits - line.deliveredUnits);

/** The day a line is served on: an overdue order is served from today. */
export const servedOn = (line: Pick<ScopeLine, 'dueOn'>, today: string) => (line.dueOn < today ? today : line.dueOn);
