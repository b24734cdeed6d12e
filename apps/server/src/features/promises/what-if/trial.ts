import type { promises } from '@rootclock/contracts';
import type * as z from 'zod/mini';
import type { Scope, ScopeLine } from '../allocation/scope.ts';

export type Change = z.output<typeof promises.whatIf>;
export type ChangeOf<Kind extends Change['kind']> = Extract<Change, { kind: Kind }>;

/** A change that is tried: what is looked at together as it stands, and as it would be. Nothing of it is stored. */
export interface Trial {
  before: Scope;
  after: Scope;
  /** The lines of the order that is changed, added or cancelled. */
  own: ReadonlySet<string>;
  /** For an order that moves, whether it keeps its turn. */
  keepsRank: boolean | null;
}

/** Lines that change and keep their turn or not: which of the two shows only when it is planned. */
export interface TurnTrial {
  before: Scope;
  changes: ReadonlyMap<string, Partial<ScopeLine>>;
  keepRank: boolean;
}
