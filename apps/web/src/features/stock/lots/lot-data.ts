import type { AppRouter } from '@rootclock/server/router';
import type { inferRouterOutputs } from '@trpc/server';

/** A lot as its page reads it. */
export type Lot = inferRouterOutputs<AppRouter>['stock']['readLot'];
export type LotEntry = Lot['entries'][number];

/** What a sheet over one lot is given. */
export interface LotSheetProps {
  lot: Lot;
  onClose: () => void;
}

/** What a bulk command works on: named lots, a whole place, or what named lots have there. `name` is for people. */
export interface Target {
  lotIds?: string[];
  placeId?: string;
  name: string;
}

export const selectionOf = ({ lotIds, placeId }: Target): { lotIds?: string[]; placeId?: string } => ({
  ...(lotIds ? { lotIds } : {}),
  ...(placeId ? { placeId } : {}),
});
export const targetOf = (lot: Lot): Target => ({ lotIds: [lot.id], name: lot.code });
