import * as z from 'zod/mini';
import { id, units } from '../fields.ts';
import type { ShortageReason } from './reasons.ts';
import { offersForItem } from './reservations.ts';

const alternative = z.strictObject({ plantId: id, containerId: id, penalty: z.int().check(z.gte(1), z.lte(100)) });

/** Whether so many plants of an item can be promised for a day, with what a line would ask besides. */
export const checkPromise = z.extend(offersForItem, {
  units,
  alternatives: z._default(z.array(alternative).check(z.maxLength(20)), []),
});

/** What could be promised from one lot or batch. */
export interface PromiseSource {
  supplyId: string;
  supplyKind: 'lot' | 'batch';
  code: string;
  plantId: string;
  scientificName: string;
  containerCode: string;
  units: number;
  readyOn: string | null;
  plantByOn: string | null;
}

/** Another item that could be promised for the same day. */
export interface PromiseInstead {
  /** `size`: the same plant in another container; `kin`: another plant of the same genus in the same container. */
  kind: 'size' | 'kin';
  plantId: string;
  scientificName: string;
  containerId: string;
  containerName: string;
  /** How many of those asked for. */
  units: number;
}

export interface PromiseCheck {
  on: string;
  /** As asked; of plants in trays the whole trays among them, one at least. */
  askedUnits: number;
  /** Of the container asked for: whole trays of so many can be promised. */
  cells: number | null;
  /** The most that can be promised without shortening anybody. */
  units: number;
  /** The first day from the one asked for, and the last before it, on which all of it could be met. */
  firstOn: string | null;
  lastBeforeOn: string | null;
  from: PromiseSource[];
  /** What stands in the way of the rest, in numbers; empty when all of it can be promised. */
  reasons: ShortageReason[];
  /** What else would do, most units first; empty when all of it can be promised. */
  instead: PromiseInstead[];
}
