import type { Outside } from './ledger-words.ts';

/** A stock account (a lot or batch at a place, a lot staged for an order line) or the outside of the nursery. */
export type AccountRef =
  | { kind: 'place'; lotId: string; placeId: string }
  | { kind: 'place'; batchId: string; placeId: string }
  | { kind: 'staged'; lotId: string; lineId: string }
  | { kind: 'outside'; outside: Outside };

/** Units from one account to another; the two counts differ only where an entry converts (`pot`, `convert`). */
export interface MovementDraft {
  from: AccountRef;
  to: AccountRef;
  fromUnits: number;
  toUnits: number;
}

export const lotAt = (lotId: string, placeId: string): AccountRef => ({ kind: 'place', lotId, placeId });
export const batchAt = (batchId: string, placeId: string): AccountRef => ({ kind: 'place', batchId, placeId });
export const stagedFor = (lotId: string, lineId: string): AccountRef => ({ kind: 'staged', lotId, lineId });
export const outside = (name: Outside): AccountRef => ({ kind: 'outside', outside: name });

/** A movement with the same count on both sides. */
export const moved = (units: number, from: AccountRef, to: AccountRef): MovementDraft => ({
  from,
  to,
  fromUnits: units,
  toUnits: units,
});

/** The lot or batch an account holds, or null for the outside. */
export function holderOf(account: AccountRef): { kind: 'lot' | 'batch'; id: string } | null {
  if (account.kind === 'outside') return null;
  return 'batchId' in account ? { kind: 'batch', id: account.batchId } : { kind: 'lot', id: account.lotId };
}
