import type { ASSIGNMENT_REASONS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { id } from '../fields.ts';

/** Why a line holds the plants that it holds. */
export const explainLine = z.strictObject({ lineId: id });

interface NamedSupply {
  code: string;
  plantByOn: string | null;
}

export interface ReservationExplanation extends NamedSupply {
  supplyId: string;
  supplyKind: 'lot' | 'batch';
  units: number;
  /** `pinned`: a person or a pull list tied them; for the others see `AssignmentReason`. */
  reason: (typeof ASSIGNMENT_REASONS)[number] | 'pinned';
  /** What else is free and would serve, compared with these. */
  instead: NamedSupply | null;
  /** What must leave its pot sooner and would serve, with the orders it is promised to. */
  sooner: (NamedSupply & { orders: string[] })[];
}

export interface LineExplanation {
  /** Lines whose plants it shares and whose turn is before its own. */
  linesBefore: number;
  rows: ReservationExplanation[];
}
