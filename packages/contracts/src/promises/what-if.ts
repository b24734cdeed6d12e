import * as z from 'zod/mini';
import { calendarDate, id, optionalText, units, unitsOrNone } from '../fields.ts';
import { orderEdits } from './order-edits.ts';
import type { ShortageReason, UnfitReason } from './reasons.ts';
import type { LineChange } from './rows.ts';

/** So many, or with none said all that stands. */
const lost = z._default(z.nullable(units), null);
const placeId = z._default(z.nullable(id), null);

/** An order moves to another day. It keeps its turn where that leaves no other order shorter, and with `keepRank` whoever becomes shorter. */
const moveOrder = z.strictObject({
  kind: z.literal('move-order'),
  orderId: id,
  dueOn: calendarDate,
  keepRank: z._default(z.boolean(), false),
});
/** An order is cancelled. Plants that were pulled for it go back to `placeId`. */
const cancelOrder = z.strictObject({ kind: z.literal('cancel-order'), orderId: id, placeId });
/** Somebody new asks for an item: planted at a site, or without one fetched by the client, whose lead days count then. It comes behind all others. */
const addOrder = z.strictObject({
  kind: z.literal('add-order'),
  plantId: id,
  containerId: id,
  units,
  dueOn: calendarDate,
  clientId: z._default(z.nullable(id), null),
  siteId: z._default(z.nullable(id), null),
  seedZone: optionalText,
  wildType: z._default(z.boolean(), false),
  untreated: z._default(z.boolean(), false),
});
/** Plants of a lot are lost. Part of a lot that stands in several places needs the place. */
const loseLot = z.strictObject({ kind: z.literal('lose-lot'), lotId: id, units: lost, placeId });
/** Cells, trays, pieces or packs of a batch are lost. */
const loseBatch = z.strictObject({ kind: z.literal('lose-batch'), batchId: id, units: lost, placeId });
/** A batch yields another number of plants, or on another day, than was expected of it. */
const changeBatch = z.strictObject({
  kind: z.literal('change-batch'),
  batchId: id,
  cautiousUnits: unitsOrNone,
  readyOn: z._default(z.nullable(calendarDate), null),
});

const changes = [moveOrder, cancelOrder, addOrder, loseLot, loseBatch, changeBatch] as const;

/** What is tried on a page of its own. */
export const whatIfAnything = z.discriminatedUnion('kind', changes);
/** A change that is tried and not kept; edits of an order are tried in their own forms. */
export const whatIf = z.discriminatedUnion('kind', [...changes, ...orderEdits]);

export const WHAT_IF_KINDS = [
  'move-order',
  'cancel-order',
  'add-order',
  'lose-lot',
  'lose-batch',
  'change-batch',
] as const;
export type WhatIfKind = (typeof WHAT_IF_KINDS)[number];

/**
 * Why a line would give plants up: they are gone, they no longer serve it (the reason says how), other orders get them, or the order itself
 * is gone; `exchanged` where the plan only gives it other plants, so that what must leave its pot goes first.
 */
export type GivenUpWhy = 'gone' | UnfitReason | 'to-others' | 'order-gone' | 'exchanged';

/** Plants of one lot or batch that a line would give up. */
export interface GivenUp {
  supplyId: string;
  supplyKind: 'lot' | 'batch';
  code: string;
  units: number;
  why: GivenUpWhy;
  /** For `to-others` the orders that would get them, by code; '' is the order that is only tried. */
  orders: string[];
}

/** Plants of one lot or batch that a line would get. */
export interface Taken {
  supplyId: string;
  supplyKind: 'lot' | 'batch';
  code: string;
  units: number;
  /** The orders that would give up plants of it; none where free ones are enough. */
  orders: string[];
}

/** A line that would fare otherwise: with more or fewer plants, or with other ones. */
export interface WhatIfLine extends LineChange {
  /** Whether it is there in both cases, only tried, or gone with its order. */
  standing: 'stays' | 'added' | 'gone';
  givesUp: GivenUp[];
  takes: Taken[];
  /** Units it would still lack, and why. */
  shortThen: number;
  reasons: ShortageReason[];
}

export interface WhatIfTotals {
  shortNow: number;
  shortThen: number;
  /** Plants that nobody is promised and that must leave their pots before the season ends. */
  decliningNow: number;
  decliningThen: number;
}

export interface WhatIf {
  /** The lines of the order that is changed first, whatever becomes of them; then all other lines that would change, in the order of their turns. */
  lines: WhatIfLine[];
  /** Lines that share plants with these and stay as they are. */
  unchangedLines: number;
  totals: WhatIfTotals;
  /** For an order that moves: whether it keeps its turn, or goes behind all others so that nobody else becomes shorter. Else null. */
  keepsRank: boolean | null;
}
