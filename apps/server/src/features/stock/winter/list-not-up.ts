import { stock } from '@rootclock/contracts';
import { EVERYONE, mayComeUpUntil } from '@rootclock/domain';
import { found } from '../../../refusal.ts';
import { query, type ReadContext } from '../../../trpc/operation.ts';
import { loadPlaces, loadStandingAt } from '../lots/store.ts';
import { type NotUpRow, readNotUp } from './reads.ts';

export interface NotUpLot extends NotUpRow {
  /** The last day on which they may still come up. */
  untilOn: string;
  /** Whether that day has passed: they are written off, or kept for another year. */
  isAsked: boolean;
}

/** Lots with plants that a spring count found not yet up; with `waiting` also those whose last-emergence day is still to come. */
export async function loadNotUp(
  context: ReadContext,
  { placeIds = null as readonly string[] | null, waiting = false } = {},
): Promise<NotUpLot[]> {
  const rows = (await readNotUp(context, placeIds)).map((row) => ({
    ...row,
    untilOn: mayComeUpUntil(row.countedOn, row.lastEmergenceMd),
  }));
  return rows
    .map((row) => ({ ...row, isAsked: row.untilOn < context.today }))
    .filter(({ isAsked }) => waiting || isAsked);
}

export const listNotUp = query({
  name: 'listNotUp',
  input: stock.listNotUp,
  roles: EVERYONE,
  read: async (context, { placeId, waiting }): Promise<NotUpLot[]> => {
    if (!placeId) return loadNotUp(context, { waiting });
    found((await loadPlaces(context, [placeId]))[0], 'place', 'placeId');
    return loadNotUp(context, { placeIds: (await loadStandingAt(context, placeId)).placeIds, waiting });
  },
});
