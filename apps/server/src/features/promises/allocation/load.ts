import type { ReadContext } from '../../../trpc/operation.ts';
import { itemOf, type Scope } from './scope.ts';
import { loadHeirs, loadReservations, loadScopeLines, type ScopeSeed } from './store.ts';
import { loadSeason, loadSupplies } from './supplies-store.ts';

/**
 * Loads what has to be looked at together with the seed. `after` is the command that is planned for: what took plants
 * in it takes over the reservations of what gave them.
 */
export async function loadScope(context: ReadContext, seed: ScopeSeed, after: string | null = null): Promise<Scope> {
  const lines = await loadScopeLines(context, seed);
  const items = new Set([
    ...lines.flatMap((line) => line.accepts.map(({ item }) => item)),
    ...(seed.items ?? []).map(({ plantId, containerId }) => itemOf(plantId, containerId)),
  ]);
  const named = [...(seed.lots ?? []), ...(seed.batches ?? [])];
  const supplies = await loadSupplies(
    context,
    [...items],
    named,
    lines.some(({ untreated }) => untreated) || (seed.asksTreatments ?? false),
  );
  const reservations = await loadReservations(
    context,
    [...lines.map(({ id }) => id), ...(seed.lines ?? [])],
    [...supplies.map(({ id }) => id), ...named],
    seed.all,
  );
  const season = await loadSeason(context, [
    ...new Set([...lines.flatMap(({ region }) => region ?? []), ...(seed.regions ?? [])]),
  ]);
  const heirs = after !== null && named.length > 1 ? await loadHeirs(context, after) : [];
  return { today: context.today, ...season, lines, supplies, reservations, heirs };
}
