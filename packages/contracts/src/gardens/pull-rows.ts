import type { HandlingRule, LineFlag, OrderKind } from '@rootclock/domain';

/** One thing to fetch: units of a lot at a place for a line. */
export interface PullRow {
  placeId: string;
  placeCode: string;
  placeName: string;
  /** The place may be closed for a while after a treatment or by an inspector. */
  closedUntilAt: string | null;
  closedReason: string | null;
  lotId: string;
  lotCode: string;
  lineId: string;
  bedName: string | null;
  plantId: string;
  scientificName: string;
  vernacularName: string;
  containerCode: string;
  units: number;
  rootChecked: boolean;
  plantByOn: string | null;
  holds: string[];
  flags: LineFlag[];
  namesakes: { plantId: string; scientificName: string }[];
}

/** What a crew must know of a plant on this list. Cautions defer to local codes and licensed practice. */
export interface PullPlant {
  plantId: string;
  scientificName: string;
  vernacularName: string;
  handling: HandlingRule[];
  cautions: { text: string; standing: string; source: string | null }[];
}

export interface PullList {
  orderId: string;
  orderCode: string;
  kind: OrderKind;
  dueOn: string;
  clientName: string;
  siteName: string | null;
  siteAddress: string | null;
  livestockNear: boolean;
  issuedOn: string | null;
  /** By place, in the order in which a crew would walk: place code, then lot. */
  rows: PullRow[];
  plants: PullPlant[];
  /** Cautions of the work itself: digging, what may be planted where. */
  workCautions: { text: string; standing: string; source: string | null }[];
  /** Reserved from batches that are not potted yet, so that nothing can be pulled of it. */
  notPotted: { lineId: string; batchCode: string; scientificName: string; units: number; readyOn: string | null }[];
  /** Lines that are short. */
  short: { lineId: string; scientificName: string; containerCode: string; units: number }[];
  /** Already staged for the order. */
  staged: {
    lineId: string;
    lotId: string;
    lotCode: string;
    scientificName: string;
    containerCode: string;
    units: number;
  }[];
}

export interface ToPullRow {
  orderId: string;
  code: string;
  kind: OrderKind;
  dueOn: string;
  clientName: string;
  siteName: string | null;
  pullIssuedOn: string | null;
  wantedUnits: number;
  toPullUnits: number;
  stagedUnits: number;
  deliveredUnits: number;
  shortUnits: number;
}
