import { OWNER } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import { nextRank, setRanks } from '../../orders/lines/store.ts';
import { outlook, requireAccepted, shortensOthers, turnOf } from '../allocation/outlook.ts';
import type { Scope, ScopeLine } from '../allocation/scope.ts';
import { planFirst } from '../solving/plan-first.ts';

interface Wish {
  acceptedShortages: readonly { lineId: string; units: number }[];
  keepRank: boolean;
}

/**
 * Decides whether lines that change keep their turn. They do where that leaves no other line shorter; else they go behind all others, or
 * the owner lets them keep it, having seen the names. What still becomes shorter must have been accepted. Stores the ranks.
 */
export async function settleTurn(
  context: CommandContext,
  scope: Scope,
  changes: ReadonlyMap<string, Partial<ScopeLine>>,
  wish: Wish,
): Promise<{ keepsRank: boolean }> {
  if (wish.keepRank) {
    const kept = outlook(scope, { lines: changes }, planFirst);
    if (shortensOthers(kept, changes) && !OWNER.includes(context.role))
      refuse('not-allowed', { role: context.role, needs: [...OWNER] }, 'keepRank');
    requireAccepted(kept, wish.acceptedShortages);
    return { keepsRank: true };
  }
  const turn = turnOf(scope, changes, await nextRank(context), planFirst);
  requireAccepted(turn.lines, wish.acceptedShortages);
  await setRanks(context, turn.ranks);
  return { keepsRank: turn.keepsRank };
}
