import { found } from '../../../refusal.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import { openEntry, requirePast, requireSince } from '../ledger/post.ts';
import { openHolds } from '../lots/holding-store.ts';
import type { Selected } from '../lots/selection.ts';
import { treatment } from '../reversal/details.ts';
import { type Closing, closePlaces, dayOf, loadClosings, touchDescent, treatmentOf } from './store.ts';

/** What was applied, as the person who applied it says. */
export interface Applied {
  product: string;
  registrationNo?: string | null | undefined;
  rate?: string | null | undefined;
  applicator: string;
  target: string;
  treatedAt: string;
  reentryHours?: number | null | undefined;
  reentryAt?: string | null | undefined;
  note: string;
}

export interface Treated {
  entryId: string;
  lots: number;
  /** Lots of hosts of larvae that are held back from orders until somebody releases them. */
  heldLots: string[];
  closedUntilAt: string | null;
  closedPlaces: string[];
}

const HOUR_MS = 3_600_000;

function reentryOf({ treatedAt, reentryHours, reentryAt }: Applied): string | null {
  if (reentryAt) return new Date(reentryAt).toISOString();
  return reentryHours ? new Date(new Date(treatedAt).getTime() + reentryHours * HOUR_MS).toISOString() : null;
}

/** Records a treatment: whom it concerns, until when its places are closed, and which lots it holds back. */
export async function treat(
  context: CommandContext,
  { lots, batches, placeIds }: Selected,
  placeId: string | null,
  applied: Applied,
): Promise<Treated> {
  const happenedOn = found(await dayOf(context, applied.treatedAt), 'nursery');
  requirePast(context, happenedOn, 'treatedAt');
  for (const lot of lots) requireSince(happenedOn, lot.pottedOn, 'treatedAt');
  const reentryAt = reentryOf(applied);
  const treatedPlaces =
    placeIds.length > 0
      ? placeIds
      : [...new Set(lots.flatMap((lot) => lot.balances.map((balance) => balance.placeId)))];
  // A re-entry time that has gone by closes nothing any more.
  const closedUntilAt = reentryAt !== null && new Date(reentryAt) > context.now ? reentryAt : null;
  const closings: Closing[] = closedUntilAt ? await loadClosings(context, treatedPlaces, closedUntilAt) : [];
  const { product, applicator, target, treatedAt } = applied;
  const entryId = await openEntry(
    context,
    {
      kind: 'treat',
      happenedOn,
      note: applied.note,
      details: treatment.written({ closings }),
      subjects: [
        ...lots.map(({ id }) => ({ kind: 'lot' as const, id })),
        ...[...new Set(batches.map(({ id }) => id))].map((id) => ({ kind: 'batch' as const, id })),
        ...treatedPlaces.map((id) => ({ kind: 'place' as const, id })),
      ],
    },
    [
      treatmentOf(context, {
        placeId,
        product,
        registrationNo: applied.registrationNo ?? null,
        rate: applied.rate ?? null,
        applicator,
        target,
        treatedAt,
        reentryAt,
      }),
    ],
  );
  await touchDescent(
    context,
    [...lots, ...batches].map(({ id }) => id),
  );
  if (closedUntilAt)
    await closePlaces(
      context,
      closings.map((closing) => closing.placeId),
      closedUntilAt,
      product,
    );
  const hosts = lots.filter((lot) => lot.larvalHost);
  const hostIds = hosts.map(({ id }) => id);
  const held = new Set(hostIds.length > 0 ? await openHolds(context, entryId, hostIds, 'treated', happenedOn) : []);
  return {
    entryId,
    lots: lots.length,
    heldLots: hosts.filter(({ id }) => held.has(id)).map(({ code }) => code),
    closedUntilAt: closings.length > 0 ? closedUntilAt : null,
    closedPlaces: closings.map(({ code }) => code),
  };
}
