import { setCountKind } from '../lots/looking-store.ts';
import { springCount } from '../reversal/details.ts';
import type { Undo } from '../reversal/undo.ts';
import { findCountedSince } from './store.ts';

/** What a spring count said of lots is ignored with its entry; only how exactly they were known before has to come back. */
export const springCountUndo: Undo = {
  kinds: ['count'],
  undo: async (context, entry) => {
    const before = Object.entries(springCount.read(entry)?.countKinds ?? {});
    if (before.length === 0) return;
    const since = await findCountedSince(
      context,
      before.map(([lotId]) => lotId),
      entry.version,
    );
    for (const [lotId, countKind] of before) if (!since.has(lotId)) await setCountKind(context, lotId, countKind);
  },
};
