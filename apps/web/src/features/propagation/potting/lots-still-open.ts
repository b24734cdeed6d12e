import { lastPottingDay, POTTING_DAYS } from '@rootclock/domain';

export const NEW_LOT = 'new';

/** Lots of the batch that plants may still be added to on a day: one lot is potted within some days of its first. */
export function lotsStillOpen<Lot extends { pottedOn: string; closedOn: string | null }>(
  lots: readonly Lot[],
  on: string,
): Lot[] {
  return lots.filter(
    (lot) => lot.closedOn === null && lot.pottedOn <= on && on <= lastPottingDay(lot.pottedOn, POTTING_DAYS),
  );
}
