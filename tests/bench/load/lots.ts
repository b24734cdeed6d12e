// The lots of a family, what was seen of them, and how units of theirs move.
import type { Account, Move } from './ledger.ts';

export interface Lot {
  id: string;
  containerId: string;
  createdEntryId: string;
  pottedDay: number;
  closedDay: number | null;
  intake: 'opening' | 'bought' | null;
  receivedUnits: number;
  /** By place, and for what was pulled by order line. */
  accounts: Map<string, Account>;
}

export interface Observed {
  id: string;
  kind: 'observe' | 'treat';
  day: number;
}

export const standing = (lot: Lot): Account[] =>
  [...lot.accounts.values()].filter(({ kind, units }) => kind === 'place' && units > 0);
export const part = (units: number, from: Account, to: Account): Move => ({
  from,
  to,
  fromUnits: units,
  toUnits: units,
});
export const whole = (from: Account, to: Account): Move => part(from.units, from, to);
