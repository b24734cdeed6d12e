import * as z from 'zod/mini';
import { asRead, calendarDate, id, longText, page, roughDay, units } from '../fields.ts';

const demand = {
  plantId: id,
  containerId: id,
  /** The day by which they are wanted, or the season or month, of which the first day counts. */
  wanted: roughDay,
  units,
  /** What one plant is worth, in the currency's smallest unit; it decides where bench space runs out. */
  unitValueMinor: z.optional(z.nullable(z.int().check(z.gte(0), z.lte(100_000_000)))),
  note: z._default(longText, ''),
};

export const addExpectedDemand = z.strictObject({ demandId: id, ...demand });
export const editExpectedDemand = z.strictObject({ demandId: id, ...demand, ...asRead });
export const withdrawExpectedDemand = z.strictObject({ demandId: id });

export const DEMAND_STATES = ['ahead', 'past', 'all'] as const;
export const listExpectedDemand = z.strictObject({
  state: z._default(z.enum(DEMAND_STATES), 'ahead'),
  plantId: z._default(z.nullable(id), null),
  wantedFrom: z._default(z.nullable(calendarDate), null),
  wantedTo: z._default(z.nullable(calendarDate), null),
  ...page,
});

export interface ExpectedDemandRow {
  demandId: string;
  edition: number;
  plantId: string;
  plantCode: string;
  scientificName: string;
  vernacularName: string;
  containerId: string;
  containerCode: string;
  containerName: string;
  wantedOn: string;
  units: number;
  unitValueMinor: number | null;
  note: string;
  /** Its day has passed, so that no plan counts it any more. */
  isPast: boolean;
}
