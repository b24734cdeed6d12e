import type { BedMoisture, BedSun, LineFlag, OrderKind, OrderState } from '@rootclock/domain';
import type { ShortageReason } from '../promises/reasons.ts';
import type { ReservationRow } from '../promises/rows.ts';

export interface ClientRow {
  id: string;
  edition: number;
  name: string;
  email: string | null;
  phone: string | null;
  address: string | null;
  leadDays: number;
  note: string;
  /** Its personal data was blanked on request; the name says so. */
  isBlanked: boolean;
  sites: number;
  openOrders: number;
  /** The first day an open order of this client is due. */
  nextDueOn: string | null;
}

export interface ClientPage extends ClientRow {
  siteRows: SiteRow[];
  orders: OrderRow[];
}

export interface BedRow {
  id: string;
  edition: number;
  siteId: string;
  name: string;
  areaCm2: number | null;
  sun: BedSun | null;
  moisture: BedMoisture | null;
  note: string;
  plantedUnits: number;
}

export interface SiteRow {
  id: string;
  edition: number;
  clientId: string;
  clientName: string;
  name: string;
  address: string;
  region: string | null;
  livestockNear: boolean;
  note: string;
  beds: BedRow[];
}

/** What stands in a garden: what was planted there, by bed and plant. */
export interface PlantedRow {
  bedId: string | null;
  bedName: string | null;
  orderId: string;
  orderCode: string;
  lineId: string;
  lotId: string;
  lotCode: string;
  plantId: string;
  scientificName: string;
  containerCode: string;
  units: number;
  lastPlantedOn: string;
}

export interface SitePage extends SiteRow {
  orders: OrderRow[];
  planted: PlantedRow[];
}

export interface OrderRow {
  id: string;
  edition: number;
  code: string;
  kind: OrderKind;
  state: OrderState;
  dueOn: string;
  clientId: string;
  clientName: string;
  siteId: string | null;
  siteName: string | null;
  pullIssuedOn: string | null;
  note: string;
  lines: number;
  wantedUnits: number;
  reservedUnits: number;
  stagedUnits: number;
  /** Planted in the garden or handed over to the client. */
  deliveredUnits: number;
  /** Wanted, but neither reserved, staged nor delivered; 0 for an order that is done or cancelled. */
  shortUnits: number;
}

export interface AlternativeRow {
  plantId: string;
  scientificName: string;
  containerId: string;
  containerCode: string;
  penalty: number;
}

export interface StagedRow {
  lotId: string;
  lotCode: string;
  scientificName: string;
  containerCode: string;
  units: number;
}

export interface OrderLineRow {
  id: string;
  edition: number;
  rank: number;
  plantId: string;
  plantCode: string;
  scientificName: string;
  vernacularName: string;
  containerId: string;
  containerCode: string;
  containerName: string;
  bedId: string | null;
  bedName: string | null;
  units: number;
  seedZone: string | null;
  wildType: boolean;
  untreated: boolean;
  withdrawnOn: string | null;
  /** The kit that it was added with, and how many of it. */
  kit: { name: string; units: number } | null;
  alternatives: AlternativeRow[];
  reservations: ReservationRow[];
  staged: StagedRow[];
  reservedUnits: number;
  stagedUnits: number;
  deliveredUnits: number;
  shortUnits: number;
  /** Empty when the line is not short. */
  reasons: ShortageReason[];
  flags: LineFlag[];
  /** Where the order takes only natives: what the line accepts, itself included, that is not known to be native to the region. */
  notNatives: { plantId: string; scientificName: string }[];
  /** With `ambiguous-name`: the other plants of the nursery that people call by the same name. */
  namesakes: { plantId: string; scientificName: string }[];
}

export interface OrderPage extends OrderRow {
  nativesOnly: boolean;
  leadDays: number;
  region: string | null;
  livestockNear: boolean;
  lineRows: OrderLineRow[];
  /** What happened for this order, newest first. */
  entries: {
    id: string;
    kind: string;
    happenedOn: string;
    note: string;
    personName: string | null;
    units: number;
    reversed: boolean;
  }[];
}
