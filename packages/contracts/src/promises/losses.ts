import type { EntryKind } from '@rootclock/domain';
import * as z from 'zod/mini';
import { id, page, shortText } from '../fields.ts';
import type { UnfitReason } from './reasons.ts';

/** Open lines that gave plants up without anybody changing their order, and are not whole again. */
export const listLosses = z.strictObject({ ...page });

/** Somebody knows of the loss and leaves it at that: this one and those of the same line before it are no longer shown. The line stays short. */
export const setLossAside = z.strictObject({ lossId: id, note: shortText });

/** What made a line lose plants: an entry, a change of another order, a day that passed, or a setting such as a rule of pot life. */
export const LOSS_SOURCES = ['entry', 'order', 'day', 'setting'] as const;
export type LossSource = (typeof LOSS_SOURCES)[number];

/** Why a lot or batch no longer serves the line: it is gone or holds fewer, does not fit any more, or another line's turn is before. */
export type LostWhy = 'gone' | 'not-accepted' | UnfitReason | 'to-others';

export interface LossCause {
  units: number;
  happenedOn: string;
  source: LossSource;
  /** What kind of entry; null where there was none. */
  entryKind: EntryKind | null;
  /** Who did it; null for what time alone did. */
  personName: string | null;
  /** The lots and batches that it happened to, by code, at most five. */
  codes: string[];
  /** Why the line's plants no longer serve it. */
  whys: LostWhy[];
}

export interface LossRow {
  /** The newest open loss of the line. */
  lossId: string;
  lineId: string;
  orderId: string;
  orderCode: string;
  clientName: string;
  siteName: string | null;
  dueOn: string;
  plantId: string;
  scientificName: string;
  containerCode: string;
  units: number;
  /** Units short now, whatever was found since. */
  shortUnits: number;
  /** Newest first. */
  causes: LossCause[];
}
