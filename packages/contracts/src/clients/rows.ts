import type { BedMoisture, BedSun } from '@rootclock/domain';

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
  /** The one site of a client with no other. */
  onlySiteId: string | null;
  openOrders: number;
  /** The first day an open order of this client is due. */
  nextDueOn: string | null;
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
