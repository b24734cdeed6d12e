import { type Clocks, type EntryKind, lotAt, type MovementDraft, pairCounts } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import type { CommandContext } from '../../../../trpc/operation.ts';
import { openEntry, postMovements, requireSince } from '../../ledger/post.ts';
import { nextCodes } from '../../ledger/store.ts';
import { drawFromLot } from '../draw.ts';
import { inheritHolds } from '../holding-store.ts';
import { requireOpenPlaces } from '../open-places.ts';
import { insertLots, type LotFacts, loadContainers, type NewLot } from '../store.ts';

/** Units of a lot that are to become plants of new lots. */
export interface Leaving {
  lot: LotFacts;
  units: number;
  placeId?: string | null | undefined;
  /** The field of the input that says how many. */
  field: string;
}

/** A new lot as the input describes it, with all that it has from the plants it is made of. */
export type Becoming = Pick<
  NewLot,
  'id' | 'containerId' | 'pottedOn' | 'pottedPrecision' | 'countKind' | 'readyOn' | 'rootCheckedOn'
> & {
  placeId: string;
  units: number;
  clocks: Clocks;
};

export interface Change {
  kind: Extract<EntryKind, 'pot' | 'pot-up' | 'convert' | 'split'>;
  happenedOn: string;
  note: string;
  details?: Record<string, unknown>;
  leaving: Leaving[];
  becoming: Becoming[];
  /** Units that turn up in the same entry: more plants dug from a bed than anyone had estimated. */
  turnedUp?: MovementDraft[];
}

/**
 * Makes new lots of the plants of others: one entry, codes from the server, and all that travels down lineage with them.
 * Held plants may change pot and label inside the nursery, since only leaving it is what a hold forbids: the new lots take over the holds.
 */
export async function becomeLots(
  context: CommandContext,
  change: Change,
): Promise<{ entryId: string; lots: { lotId: string; code: string }[] }> {
  const { leaving, becoming, happenedOn } = change;
  for (const { lot } of leaving) requireSince(happenedOn, lot.pottedOn);
  await requireOpenPlaces(context, [...new Set(becoming.map((next) => next.placeId))], 'into.0.placeId');
  const drawn = leaving.flatMap(({ lot, units, placeId, field }) =>
    drawFromLot(lot, units, placeId, field).map((taken) => ({ ...taken, lotId: lot.id })),
  );
  const entryId = await openEntry(context, change);
  const lots = await nameLots(context, found(leaving[0], 'lot').lot, becoming, happenedOn);
  await insertLots(context, entryId, lots);
  const movements = pairCounts(drawn, becoming).map(({ from, to, fromUnits, toUnits }) => ({
    from: lotAt(from.lotId, from.placeId),
    to: lotAt(to.id, to.placeId),
    fromUnits,
    toUnits,
  }));
  await postMovements(context, entryId, [...(change.turnedUp ?? []), ...movements]);
  await inheritHolds(context, entryId);
  return { entryId, lots: lots.map(({ id, code }) => ({ lotId: id, code })) };
}

/** New lots of one plant and source, each with a code of its own. */
export async function nameLots(
  context: CommandContext,
  { plantId, plantCode, sourceId }: LotFacts,
  becoming: readonly Becoming[],
  happenedOn: string,
): Promise<NewLot[]> {
  const codes = await nextCodes(context, plantCode, Number(happenedOn.slice(0, 4)), becoming.length);
  return becoming.map(({ clocks, placeId: _place, units: _units, ...lot }, i) => {
    const standing = clocks.assumed ? ('assumed' as const) : ('recorded' as const);
    return {
      ...lot,
      code: found(codes[i], 'code'),
      plantId,
      sourceId,
      confinedOn: clocks.confinedOn,
      confinedStanding: standing,
      containerOn: clocks.containerOn,
      containerStanding: standing,
    };
  });
}

export const clocksOf = (lot: LotFacts): Clocks => ({
  confinedOn: lot.confinedOn,
  containerOn: lot.containerOn,
  assumed: lot.confinedStanding === 'assumed' || lot.containerStanding === 'assumed',
});

/** Plants in the ground have no pot to leave; they are lifted, which starts their clocks anew. */
export function requirePotted(lot: LotFacts, field = 'lotId'): void {
  if (lot.containerKind === 'ground') refuse('stands-in-ground', { lot: lot.code }, field);
}

/** The containers of new lots, which must be pots, trays or flats: the ground is what plants are planted in, not potted in. */
export async function requirePots(context: CommandContext, containerIds: readonly string[]): Promise<void> {
  for (const container of await loadContainers(context, [...new Set(containerIds)], 'into.0.containerId')) {
    if (container.kind === 'ground')
      refuse(
        'wrong-container',
        { container: container.code, kind: container.kind, needs: 'pot' },
        'into.0.containerId',
      );
  }
}

export const sumUnits = (parts: readonly { units: number }[]) => parts.reduce((sum, { units }) => sum + units, 0);
