import type { CalendarDate } from '../kernel/dates.ts';
import type { OrderKind } from '../orders/order-words.ts';
import type { WinterDays } from '../stock/winter/expected-living.ts';

/** Whom plants are wanted for: a client's order, or what the nursery expects to need beyond its orders. */
export type DemandKind = OrderKind | 'expected';

/** Plant and container, as orders name them. */
export interface PlanItem {
  plantId: string;
  containerId: string;
}
export const planItem = ({ plantId, containerId }: PlanItem): string => `${plantId}@${containerId}`;

/** So many plants on a day. */
export interface PlanDemand extends PlanItem {
  id: string;
  kind: DemandKind;
  /** The order in which open lines were promised, a lower one first; null for what is only expected, which comes after all of them. */
  rank: number | null;
  on: CalendarDate;
  /** Wanted and neither staged nor delivered yet. */
  units: number;
  /** Items that will do, what was asked for at penalty 0 among them. */
  accepts: readonly { item: string; penalty: number }[];
  /** Supplies judged unfit for it. */
  refuses: readonly string[];
  /** What is reserved for it, in units of today. */
  held: readonly { supplyId: string; units: number }[];
  /** Of one plant, in the currency's smallest unit; null where nobody said. */
  unitValue: number | null;
  /** What a source has to be like for it. */
  seedZone: string | null;
  wildType: boolean;
}

/** How plants of a supply die while they wait. */
export interface Wearing {
  lossRatePerDay: number;
  winterSurvival: number;
  winter: WinterDays;
}

/** A lot, or a batch on the way at its stored yield. */
export interface PlanSupply extends Wearing {
  id: string;
  item: string;
  units: number;
  /** From when they can go out; null where nobody knows yet, so that they serve nothing. */
  readyOn: CalendarDate | null;
  plantByOn: CalendarDate | null;
  /** The day the units were counted for: today for a lot, the ready day for a batch. Losses count from there. */
  countedOn: CalendarDate;
}
