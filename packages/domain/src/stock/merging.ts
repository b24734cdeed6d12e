import { latestOf } from '../kernel/dates.ts';
import { InputError } from '../kernel/input.ts';

/** What must be alike before plants may share a lot. */
export interface MergeableLot {
  plantId: string;
  sourceId: string;
  containerId: string;
}

export const LOT_DIFFERENCES = ['plant', 'source', 'container'] as const;
export type LotDifference = (typeof LOT_DIFFERENCES)[number];

/**
 * In what lots differ that are to become one, or nothing. A lot is of one plant and one source, so that what was delivered can be
 * traced; a container is asked for only where the plants stay in theirs. Throws InputError when there is no lot.
 */
export function lotDifferences(lots: readonly MergeableLot[], { sameContainer = true } = {}): LotDifference[] {
  if (lots.length === 0) throw new InputError('lots', 'must hold at least one lot');
  const differ = (of: (lot: MergeableLot) => string) => new Set(lots.map(of)).size > 1;
  return [
    ...(differ((lot) => lot.plantId) ? ['plant' as const] : []),
    ...(differ((lot) => lot.sourceId) ? ['source' as const] : []),
    ...(sameContainer && differ((lot) => lot.containerId) ? ['container' as const] : []),
  ];
}

/**
 * The readiness of plants that become one lot: ready only when all are, and then since the last of them; a root ball counts as checked
 * only when every one was. Null stands for a day that is not known.
 */
export function readinessTogether(lots: readonly { readyOn: string | null; rootCheckedOn: string | null }[]): {
  readyOn: string | null;
  rootCheckedOn: string | null;
} {
  const lastOf = (days: (string | null)[]) => {
    const known = days.filter((on): on is string => on !== null);
    return known.length === 0 || known.length < days.length ? null : latestOf(...known);
  };
  return {
    readyOn: lastOf(lots.map((lot) => lot.readyOn)),
    rootCheckedOn: lastOf(lots.map((lot) => lot.rootCheckedOn)),
  };
}
