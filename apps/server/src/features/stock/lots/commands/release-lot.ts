import { stock } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { openEntry, requireSince } from '../../ledger/post.ts';
import { holdClosed, openHoldSince } from '../holding-store.ts';
import { loadLot } from '../store.ts';

export const releaseLot = command({
  name: 'releaseLot',
  input: stock.releaseLot,
  roles: GROWERS,
  run: async (context, { lotId, reason, releaseReason, happenedOn, note }) => {
    const lot = await loadLot(context, lotId);
    const heldOn = await openHoldSince(context, lotId, reason);
    if (heldOn === undefined) refuse('not-held', { lot: lot.code, reason }, 'reason');
    requireSince(happenedOn, heldOn);
    const entryId = await openEntry(
      context,
      {
        kind: 'release',
        happenedOn,
        cause: reason,
        note,
        details: { releaseReason },
        subjects: [{ kind: 'lot', id: lotId }],
      },
      [holdClosed(context, { lotId, reason, releasedOn: happenedOn, releaseReason })],
    );
    return { entryId };
  },
});
