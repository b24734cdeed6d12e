import { refuse } from '../../../refusal.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import { type LotFacts, loadLots, loadPlaces, loadStandingAt, type StandingAt } from './store.ts';

/** What a bulk command was asked to work on: named lots, a whole place with the places within it, or what named lots have there. */
export interface Selection {
  lotIds?: string[] | undefined;
  placeId?: string | null | undefined;
}

export interface Selected {
  /** Lots with a balance in the selection; their balances are only those that are selected. */
  lots: LotFacts[];
  /** Batches that stand in a selected place, for what concerns everything that stands there. */
  batches: StandingAt['batches'];
  /** The place named and all within it; empty when only lots were named. */
  placeIds: string[];
}

/** Loads a selection for a command on lots only: a place where only batches stand has nothing for it. */
export async function loadSelectedLots(context: CommandContext, selection: Selection): Promise<Selected> {
  const selected = await loadSelection(context, selection);
  if (selected.lots.length > 0) return selected;
  const [place] = await loadPlaces(context, selected.placeIds.slice(0, 1));
  return refuse('nothing-there', { of: place?.code ?? '' }, 'placeId');
}

/** Loads a selection, or refuses one of which nothing stands anywhere. */
export async function loadSelection(context: CommandContext, selection: Selection): Promise<Selected> {
  if (!selection.placeId) {
    const lots = await loadLots(context, [...new Set(selection.lotIds)], 'lotIds');
    const standing = lots.filter((lot) => lot.balances.length > 0);
    if (standing.length === 0) refuse('nothing-there', { of: lots[0]?.code ?? '' }, 'lotIds');
    return { lots: standing, batches: [], placeIds: [] };
  }
  const [place] = await loadPlaces(context, [selection.placeId]);
  const there = await loadStandingAt(context, selection.placeId);
  const inside = new Set(there.placeIds);
  const wanted = selection.lotIds ?? there.lotIds;
  const lots = (await loadLots(context, [...new Set(wanted)], 'lotIds'))
    .map((lot) => ({ ...lot, balances: lot.balances.filter((balance) => inside.has(balance.placeId)) }))
    .filter((lot) => lot.balances.length > 0);
  const batches = selection.lotIds ? [] : there.batches;
  if (lots.length === 0 && batches.length === 0) refuse('nothing-there', { of: place?.code ?? '' }, 'placeId');
  return { lots, batches, placeIds: there.placeIds };
}
