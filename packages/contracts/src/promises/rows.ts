import type { ShortageReason, UnfitReason } from './reasons.ts';

/** Units of one lot or batch that are held for a line. */
export interface ReservationRow {
  supplyId: string;
  supplyKind: 'lot' | 'batch';
  code: string;
  plantId: string;
  scientificName: string;
  containerId: string;
  containerCode: string;
  units: number;
  /** Tied by a person or by a pull list; floating ones may change to another lot when that serves better. */
  pinned: boolean;
  /** Null while it is not known when the plants can go out. */
  readyOn: string | null;
  /** Only a lot whose root ball was checked is ready; until then it is expected to be. */
  rootChecked: boolean;
  plantByOn: string | null;
  plantByState: string;
  /** The last day on which the plants may leave for this order: the plant-by day less the client's lead, cut by the site's windows. */
  leaveByOn: string | null;
  /** Since when the clock of the rule that binds runs; with the plant-by day it says how far pot life has gone. */
  clockOn: string | null;
  places: { placeId: string; code: string; units: number }[];
}

/** A lot or batch that could serve a line. */
export interface OfferRow {
  supplyId: string;
  supplyKind: 'lot' | 'batch';
  code: string;
  plantId: string;
  scientificName: string;
  containerId: string;
  containerCode: string;
  /** 0 for the item asked for, else that of the alternative. */
  penalty: number;
  onHandUnits: number;
  reservedUnits: number;
  freeUnits: number;
  readyOn: string | null;
  rootChecked: boolean;
  plantByOn: string | null;
  plantByState: string;
  leaveByOn: string | null;
  clockOn: string | null;
  seedZone: string | null;
  origin: string;
  /** Released from this line by a person; pinning it takes that back. */
  releasedByHand: boolean;
}

export interface Offers {
  on: string;
  /** Eligible ones first to last as they must leave their pots. */
  offers: OfferRow[];
  /** What of the item cannot serve, and why, in numbers. */
  reasons: ShortageReason[];
}

/** An open line that could take what a lot or batch holds. */
export interface DemandRow {
  lineId: string;
  orderId: string;
  orderCode: string;
  clientName: string;
  siteName: string | null;
  dueOn: string;
  plantId: string;
  scientificName: string;
  containerCode: string;
  /** Null where the line does not take the item. */
  penalty: number | null;
  units: number;
  shortUnits: number;
  /** Units this very lot or batch holds for the line. */
  reservedHereUnits: number;
  /** Whether it serves as things stand; if not, `reasons` says why. */
  serves: boolean;
  reasons: UnfitReason[];
  /** What would have to change for it to serve; null when it serves. */
  needs: DemandNeeds | null;
  /** Units that nobody was promised and that the line still wants: so many would be saved if they are to decline. */
  savedUnits: number;
}

/** Changes on an order, all of which a supply needs before it can serve a line. */
export interface DemandNeeds {
  /** The line does not take this item yet. */
  alternative: boolean;
  /** What the line asks and the supply does not meet, days apart. */
  conditions: Exclude<UnfitReason, 'not-ready' | 'past-plant-by'>[];
  /** The first day on which the plants are ready, where the order's day is before it. */
  fromOn: string | null;
  /** The last day on which the plants may leave, where the order's day is after it. */
  untilOn: string | null;
  /** That last day is over already: no day of an order would do. */
  isTooLate: boolean;
}

export interface SupplyDemand {
  supplyId: string;
  supplyKind: 'lot' | 'batch';
  code: string;
  onHandUnits: number;
  reservedUnits: number;
  freeUnits: number;
  plantByOn: string | null;
  lines: DemandRow[];
}

/** How a line would fare: filled counts what is reserved, staged and planted alike. */
export interface LineChange {
  lineId: string;
  orderId: string;
  orderCode: string;
  clientName: string;
  dueOn: string;
  scientificName: string;
  containerCode: string;
  units: number;
  filledNow: number;
  filledThen: number;
  /** Units by which it becomes shorter; 0 when it does not. */
  shorterBy: number;
}

export interface ShortRow {
  lineId: string;
  orderId: string;
  orderCode: string;
  orderKind: string;
  clientName: string;
  siteName: string | null;
  dueOn: string;
  plantId: string;
  scientificName: string;
  containerCode: string;
  units: number;
  filledUnits: number;
  shortUnits: number;
}
