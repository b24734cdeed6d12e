import type { LineFlag, OrderKind, OrderState } from '@rootclock/domain';
import type { ShortageReason } from './reasons.ts';
import type { ReservationRow } from './rows.ts';

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
