import { found, refuse } from '../../../refusal.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import { loadPlantNames, type PlantName } from '../../sources/store.ts';
import { type IntakeContainer, type IntakePlace, loadIntakeGround, loadTakenLots } from './store.ts';

/** The ids that every row of a list names. */
export interface NamedRow {
  lotId: string;
  plantId: string;
  containerId: string;
  placeId: string;
}

export interface RowGround {
  plant: PlantName;
  container: IntakeContainer;
  place: IntakePlace;
}

/**
 * Loads what the rows name, or refuses at the first field that names nothing of this nursery. `path` is the list's own name, so that
 * the error of the fourth row is `rows.3.plantId`.
 */
export async function lookUpRows(
  context: CommandContext,
  rows: readonly NamedRow[],
  path: string,
): Promise<RowGround[]> {
  const plants = await loadPlantNames(
    context,
    rows.map((row) => row.plantId),
  );
  const { containers, places } = await loadIntakeGround(
    context,
    rows.map((row) => row.containerId),
    rows.map((row) => row.placeId),
  );
  const taken = await loadTakenLots(
    context,
    rows.map((row) => row.lotId),
  );
  return rows.map((row, index) => {
    const field = (name: string) => `${path}.${index}.${name}`;
    if (taken.has(row.lotId)) refuse('id-taken', { what: 'lot' }, field('lotId'));
    taken.add(row.lotId);
    const plant = found(plants.get(row.plantId), 'plant', field('plantId'));
    const container = found(containers.get(row.containerId), 'container', field('containerId'));
    const place = found(places.get(row.placeId), 'place', field('placeId'));
    if (place.retired) refuse('place-retired', { place: place.code }, field('placeId'));
    if (container.kind === 'ground' && place.kind !== 'nursery-bed')
      refuse('not-a-nursery-bed', { place: place.code, kind: place.kind }, field('placeId'));
    return { plant, container, place };
  });
}

/** A closed place takes nothing in: nobody may carry plants into it. */
export function requireOpen({ now }: CommandContext, place: IntakePlace, field: string): void {
  if (place.closedUntilAt !== null && new Date(place.closedUntilAt) > now) {
    refuse('place-closed', { place: place.code, until: place.closedUntilAt, reason: place.closedReason ?? '' }, field);
  }
}

/** Two lists of one length, side by side. */
export const zipped = <A, B>(left: readonly A[], right: readonly B[]): [A, B][] =>
  left.flatMap((a, index): [A, B][] => {
    const b = right[index];
    return b === undefined ? [] : [[a, b]];
  });
