import { lotAt, moved, outside } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import type { CommandContext } from '../../../../trpc/operation.ts';
import { postEntry, requireSince } from '../../ledger/post.ts';
import { drawFromLot } from '../draw.ts';
import { loadLot } from '../store.ts';

export interface Departure {
  lotId: string;
  units: number;
  placeId?: string | null | undefined;
  party?: string | null | undefined;
  happenedOn: string;
  note: string;
}

/**
 * Plants that went into somebody else's hands. A hold forbids that, whatever its reason. Promises do not: the plants are gone, so
 * reservations are given up where too little is left.
 */
export async function leave(
  context: CommandContext,
  kind: 'sell' | 'give',
  { lotId, units, placeId, party, happenedOn, note }: Departure,
): Promise<{ entryId: string }> {
  const lot = await loadLot(context, lotId);
  requireSince(happenedOn, lot.pottedOn);
  if (lot.holds.length > 0) refuse('lot-held', { lot: lot.code, reasons: lot.holds }, 'lotId');
  const to = outside(kind === 'sell' ? 'sold' : 'given');
  const entryId = await postEntry(
    context,
    { kind, happenedOn, note, details: party ? { party } : {} },
    drawFromLot(lot, units, placeId).map((drawn) => moved(drawn.units, lotAt(lot.id, drawn.placeId), to)),
  );
  return { entryId };
}
