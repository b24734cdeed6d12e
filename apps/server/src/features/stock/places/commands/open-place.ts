import { stock } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { editing } from '../../../../trpc/editing.ts';
import { openEntry } from '../../ledger/post.ts';
import { placeOpening } from '../../reversal/details.ts';
import { closingEdits, loadPlace, setPlaceClosed } from '../store.ts';

/** Opens a place before its time; the reason is kept with the day and the person. */
export const openPlace = editing({
  name: 'openPlace',
  input: stock.openPlace,
  roles: GROWERS,
  edits: closingEdits,
  run: async (context, { placeId, reason }) => {
    const place = await loadPlace(context, placeId);
    if (place.closedUntilAt === null || new Date(place.closedUntilAt) <= context.now)
      refuse('place-not-closed', { place: place.code }, 'placeId');
    const entryId = await openEntry(context, {
      kind: 'observe',
      happenedOn: context.today,
      note: reason,
      details: placeOpening.written({ place: 'opened', wasUntilAt: place.closedUntilAt }),
      subjects: [{ kind: 'place', id: place.id }],
    });
    await setPlaceClosed(context, place.id, null, null);
    return { entryId };
  },
});
