import { stock } from '@rootclock/contracts';
import { FIELD, GROWERS } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { openEntry } from '../../ledger/post.ts';
import { findWhatTookUnits, loadEntry, mirrorMovements } from '../store.ts';
import { MOVEMENTS_ONLY, type Undo } from '../undo.ts';

/**
 * Takes an entry back as a whole and once. Units that have moved on since keep it standing: the later entries are named, so that they can
 * be taken back first. Lots the entry made end empty and are closed by the replan; lots it had emptied open again.
 * Crew may take back what they entered themselves, growers everything.
 */
export const reverseEntry = (undos: readonly Undo[]) => {
  const known = new Set([...MOVEMENTS_ONLY, ...undos.flatMap(({ kinds }) => (kinds === 'every' ? [] : kinds))]);
  return command({
    name: 'reverseEntry',
    input: stock.reverseEntry,
    roles: FIELD,
    run: async (context, { entryId, note }) => {
      const entry = found(await loadEntry(context, entryId), 'entry', 'entryId');
      if (entry.kind === 'reverse') refuse('reversal-is-final', undefined, 'entryId');
      if (entry.reversed) refuse('already-reversed', { kind: entry.kind }, 'entryId');
      if (!known.has(entry.kind)) refuse('cannot-reverse', { kind: entry.kind }, 'entryId');
      if (entry.personId !== context.personId && !GROWERS.includes(context.role))
        refuse('not-allowed', { role: context.role, needs: [...GROWERS] });
      const { short, later } = await findWhatTookUnits(context, entry);
      if (short) refuse('units-have-gone', { later }, 'entryId');
      const reversalId = await openEntry(context, {
        kind: 'reverse',
        happenedOn: context.today,
        reversesId: entry.id,
        note,
        details: { kind: entry.kind },
        subjects: entry.subjects,
      });
      await mirrorMovements(context, { entryId: reversalId, reversesId: entry.id });
      for (const { kinds, undo } of undos)
        if (kinds === 'every' || kinds.includes(entry.kind)) await undo(context, entry);
      return { entryId: reversalId, kind: entry.kind };
    },
  });
};
