import { stock } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { openEntry, requireSince } from '../../ledger/post.ts';
import { openHolds } from '../holding-store.ts';
import { loadSelectedLots } from '../selection.ts';

/** A hold is on whole lots (a part is split off first). Lots that are held for this reason already are left as they are. */
export const holdMany = command({
  name: 'holdMany',
  input: stock.holdMany,
  roles: GROWERS,
  run: async (context, { reason, happenedOn, note, ...selection }) => {
    const { lots, placeIds } = await loadSelectedLots(context, selection);
    const free = lots.filter((lot) => !lot.holds.includes(reason));
    if (free.length === 0) refuse('already-held', { lot: lots[0]?.code ?? '', reason }, 'reason');
    for (const lot of free) requireSince(happenedOn, lot.pottedOn);
    const entryId = await openEntry(context, {
      kind: 'hold',
      happenedOn,
      cause: reason,
      note,
      subjects: [
        ...free.map(({ id }) => ({ kind: 'lot' as const, id })),
        ...placeIds.slice(0, 1).map((id) => ({ kind: 'place' as const, id })),
      ],
    });
    await openHolds(
      context,
      entryId,
      free.map(({ id }) => id),
      reason,
      happenedOn,
    );
    return { entryId, lots: free.length };
  },
});
