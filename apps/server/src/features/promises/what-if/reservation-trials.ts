import { refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadScope } from '../allocation/load.ts';
import { changed, type ScopeChange } from '../allocation/outlook.ts';
import type { Scope, ScopeLine, ScopeReservation } from '../allocation/scope.ts';
import { requireOpenLine } from '../reservations/open-line.ts';
import { pinning } from '../reservations/pinning.ts';
import { loadSupply, type SupplyFacts } from '../reservations/store.ts';
import type { ChangeOf, Trial } from './trial.ts';

interface Pair {
  before: Scope;
  supply: SupplyFacts;
  /** What is reserved of the lot or batch for the line, and all other reservations. */
  rows: ScopeReservation[];
  others: ScopeReservation[];
}

/** A person's word on a lot is taken back by tying it, as the command does. */
export async function pin(context: ReadContext, { lineId, supplyId, units }: ChangeOf<'pin'>): Promise<Trial> {
  const { before, supply } = await loadPair(context, lineId, supplyId);
  const willing = changed(before, { lines: refusing(before, lineId, (ids) => ids.filter((id) => id !== supplyId)) });
  const pinned = pinning(willing, lineId, supply, units);
  return trialOf(lineId, before, changed(willing, { reservations: [...pinned.others, pinned.pin] }));
}

export async function unpin(context: ReadContext, { lineId, supplyId }: ChangeOf<'unpin'>): Promise<Trial> {
  const { before, supply, rows, others } = await loadPair(context, lineId, supplyId);
  const pinned = rows.find((row) => row.pinned) ?? refuse('nothing-reserved', { supply: supply.code }, 'supplyId');
  const floating = { ...pinned, pinned: false, units: rows.reduce((sum, { units }) => sum + units, 0) };
  return trialOf(lineId, before, changed(before, { reservations: [...others, floating] }));
}

export async function release(context: ReadContext, { lineId, supplyId }: ChangeOf<'release'>): Promise<Trial> {
  const { before, supply, rows, others } = await loadPair(context, lineId, supplyId);
  if (rows.length === 0) refuse('nothing-reserved', { supply: supply.code }, 'supplyId');
  return trialOf(
    lineId,
    before,
    changed(before, { lines: refusing(before, lineId, (ids) => [...ids, supplyId]), reservations: others }),
  );
}

async function loadPair(context: ReadContext, lineId: string, supplyId: string): Promise<Pair> {
  await requireOpenLine(context, lineId);
  const supply = await loadSupply(context, supplyId);
  const before = await loadScope(context, {
    lines: [lineId],
    [supply.kind === 'lot' ? 'lots' : 'batches']: [supplyId],
  });
  const isPair = (row: ScopeReservation) => row.lineId === lineId && row.supplyId === supplyId;
  return {
    before,
    supply,
    rows: before.reservations.filter(isPair),
    others: before.reservations.filter((row) => !isPair(row)),
  };
}

const refusing = (
  { lines }: Scope,
  lineId: string,
  change: (ids: readonly string[]) => string[],
): NonNullable<ScopeChange['lines']> =>
  new Map<string, Partial<ScopeLine>>(
    lines.filter(({ id }) => id === lineId).map(({ refusedIds }) => [lineId, { refusedIds: change(refusedIds) }]),
  );

const trialOf = (lineId: string, before: Scope, after: Scope): Trial => ({
  before,
  after,
  own: new Set([lineId]),
  keepsRank: null,
});
