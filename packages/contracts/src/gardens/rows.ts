import type { ClientRow, SiteRow } from '../clients/rows.ts';
import type { OrderRow } from '../promises/order-rows.ts';

export interface ClientPage extends ClientRow {
  siteRows: SiteRow[];
  orders: OrderRow[];
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
