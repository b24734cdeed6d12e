import { found, refuse } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';
import { loadPlaces, type LotFacts, type PlaceFacts } from './store.ts';

/**
 * The places plants are to be brought to. A closed place takes nothing in, since nobody may carry plants into it; what already left it
 * is recorded all the same, for what happened is not undone by refusing to write it down.
 */
export async function requireOpenPlaces(
  context: ReadContext,
  placeIds: readonly string[],
  field = 'placeId',
): Promise<PlaceFacts[]> {
  const places = await loadPlaces(context, placeIds, field);
  for (const place of places) {
    if (place.retired) refuse('not-found', { what: 'place' }, field);
    if (place.closedUntilAt !== null && new Date(place.closedUntilAt) > context.now) {
      refuse(
        'place-closed',
        { place: place.code, until: place.closedUntilAt, reason: place.closedReason ?? '' },
        field,
      );
    }
  }
  return places;
}

/** Whether plants of a lot that are brought there may come into quarantine or out of it. What stands in quarantine is no supply. */
export const involvesQuarantine = (
  to: Pick<PlaceFacts, 'kind'> | undefined,
  lot: Pick<LotFacts, 'inQuarantine'>,
): boolean => to?.kind === 'quarantine' || lot.inQuarantine;

/** A nursery bed, where plants stand in the ground. */
export async function requireBed(context: CommandContext, bedId: string, field: string): Promise<PlaceFacts> {
  const [bed] = await requireOpenPlaces(context, [bedId], field);
  const place = found(bed, 'place', field);
  if (place.kind !== 'nursery-bed') refuse('not-a-nursery-bed', { place: place.code, kind: place.kind }, field);
  return place;
}
