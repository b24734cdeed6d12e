import { BOUGHT_FORMS, COUNT_KINDS, SOURCE_KINDS, SOURCE_ORIGINS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { calendarDate, id, longText, optionalText, roughDay, units, unitsOrNone } from '../fields.ts';

/** The most rows of one list: an entry is reversed as a whole, so longer lists are better sent in parts. */
export const OPENING_ROWS = 100;
export const BOUGHT_LINES = 50;

/** Where the plants of a row came from: a source that stands, or words for a new one; nothing at all means unknown. */
const origin = {
  sourceId: z.optional(z.nullable(id)),
  sourceKind: z.optional(z.nullable(z.enum(SOURCE_KINDS))),
  provenance: optionalText,
  seedZone: optionalText,
};

const openingRow = z.strictObject({
  lotId: id,
  plantId: id,
  containerId: id,
  placeId: id,
  units,
  /** Since when they stand in this container; left out when nobody knows. */
  since: z.optional(z.nullable(roughDay)),
  /** Since when their roots are in any cell or pot, where that is longer. */
  confinedSince: z.optional(z.nullable(roughDay)),
  ...origin,
  countKind: z._default(z.enum(COUNT_KINDS), 'counted'),
  /** The root ball was looked at and holds: the lot is ready. */
  rootChecked: z._default(z.boolean(), false),
  note: z._default(longText, ''),
});

/** Stock on hand when the records begin: a list is one entry, taken in whole or not at all. */
export const receiveOpening = z.strictObject({
  happenedOn: calendarDate,
  rows: z.array(openingRow).check(z.minLength(1), z.maxLength(OPENING_ROWS)),
  note: z._default(longText, ''),
});

const boughtLine = z.strictObject({
  lotId: id,
  plantId: id,
  form: z.enum(BOUGHT_FORMS),
  containerId: id,
  placeId: id,
  /** What the invoice says, where there is one; what arrived is what is booked. */
  invoicedUnits: z.optional(z.nullable(unitsOrNone)),
  receivedUnits: units,
  countKind: z._default(z.enum(COUNT_KINDS), 'counted'),
  sourceId: z.optional(z.nullable(id)),
  vendorLot: optionalText,
  provenance: optionalText,
  seedZone: optionalText,
  origin: z._default(z.enum(SOURCE_ORIGINS), 'unknown'),
  /** The vendor's sowing day and the days until it germinated, as stated. */
  sown: z.optional(z.nullable(roughDay)),
  germinationDays: z.optional(z.nullable(z.int().check(z.gte(0), z.lte(1000)))),
  /** Since when bought pots stand in their pot, as stated. */
  inPotSince: z.optional(z.nullable(roughDay)),
  rootChecked: z._default(z.boolean(), false),
  note: z._default(longText, ''),
});

/** A delivery: all its lines are one entry. */
export const receiveBought = z.strictObject({
  /** The day it arrived. */
  happenedOn: calendarDate,
  vendor: optionalText,
  pesticideStatement: optionalText,
  /** Hold all of it until somebody has looked it over. */
  quarantine: z._default(z.boolean(), true),
  lines: z.array(boughtLine).check(z.minLength(1), z.maxLength(BOUGHT_LINES)),
  note: z._default(longText, ''),
});
