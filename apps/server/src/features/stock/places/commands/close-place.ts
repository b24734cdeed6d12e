import { stock } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { openEntry } from '../../ledger/post.ts';
import { placeClosing } from '../../reversal/details.ts';
import { loadPlace, setPlaceClosed } from '../store.ts';

/** Closes a place for an inspector's stop, a re-entry time or mud. Whoever sees the danger may do it, so crew too. */
export const closePlace = command({
  name: 'closePlace',
  input: stock.closePlace,
  roles: FIELD,
  run: async (context, { placeId, untilAt, reason }) => {
    const place = await loadPlace(context, placeId);
    if (place.retired) refuse('place-retired', { place: place.code }, 'placeId');
    const until = new Date(untilAt);
    if (until <= context.now) refuse('closing-is-past', { until: untilAt }, 'untilAt');
    // A re-entry time must not be cut short by the way.
    if (place.closedUntilAt !== null && new Date(place.closedUntilAt) > until) {
      refuse(
        'closed-for-longer',
        { place: place.code, until: place.closedUntilAt, reason: place.closedReason ?? '' },
        'untilAt',
      );
    }
    const entryId = await openEntry(context, {
      kind: 'observe',
      happenedOn: context.today,
      note: reason,
      details: placeClosing.written({ place: 'closed', untilAt: until.toISOString() }),
      subjects: [{ kind: 'place', id: place.id }],
    });
    await setPlaceClosed(context, place.id, until, reason);
    return { entryId };
  },
});
