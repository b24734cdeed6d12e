import { type AccountRef, type EntryKind, holderOf, type MovementDraft } from '@rootclock/domain';
import type { Sql } from '../../../db/sql.ts';
import { refuse } from '../../../refusal.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import type { EntryDraft } from './entry-draft.ts';
import { type AccountRow, insertEntry, insertEntryWithMovements, insertMovements, type MovementRow } from './store.ts';

/**
 * Writes the entry of a command, and in the same statement what belongs to it besides. One command makes one entry, and the entry's id is the command's, so that whoever sent it can reverse it.
 * A day in the future is refused here, for every kind of entry.
 */
export async function openEntry(
  context: CommandContext,
  draft: EntryDraft,
  beside: readonly Sql[] = [],
): Promise<string> {
  const subjects = subjectsOf(context, draft);
  await insertEntry(context, draft, subjects, beside);
  return context.commandId;
}

/** Moves units under an entry that stands; all movements of an entry go in at once. */
export async function postMovements(
  context: CommandContext,
  entryId: string,
  movements: readonly MovementDraft[],
): Promise<void> {
  if (movements.length === 0) return;
  const { accounts, rows } = rowsOf(context, movements, false);
  await insertMovements(context, entryId, accounts, rows);
}

/** An entry and its movements in one go, for commands that make no new lot in between. */
export async function postEntry(
  context: CommandContext,
  draft: EntryDraft,
  movements: readonly MovementDraft[],
  beside: readonly Sql[] = [],
): Promise<string> {
  if (movements.length === 0) return openEntry(context, draft, beside);
  const subjects = subjectsOf(context, draft);
  const { accounts, rows } = rowsOf(context, movements, draft.isOnlyMoved ?? false);
  await insertEntryWithMovements(context, draft, subjects, accounts, rows, beside);
  return context.commandId;
}

/** Kinds of entry that change a lot only by what they move, which the movements tell, or by what was found out, which its statement tells. */
const TOLD_ELSEWHERE: ReadonlySet<EntryKind> = new Set<EntryKind>([
  'lose',
  'sell',
  'give',
  'count',
  'pull',
  'plant',
  'observe',
]);
const OF_USE_ALONE: ReadonlySet<EntryKind> = new Set<EntryKind>(['hold', 'release', 'treat']);

function subjectsOf(context: CommandContext, draft: EntryDraft): NonNullable<EntryDraft['subjects']> {
  requirePast(context, draft.happenedOn);
  const subjects = draft.subjects ?? [];
  for (const subject of subjects) {
    if (subject.kind === 'lot' && OF_USE_ALONE.has(draft.kind)) context.touched.lotOfOtherUse(subject.id);
    else if (subject.kind === 'lot' && !TOLD_ELSEWHERE.has(draft.kind)) context.touched.lot(subject.id);
    if (subject.kind === 'batch') context.touched.batch(subject.id);
    if (subject.kind === 'line') context.touched.line(subject.id);
  }
  context.touched.features.add('stock');
  return subjects;
}

function rowsOf(
  context: CommandContext,
  movements: readonly MovementDraft[],
  isOnlyMoved: boolean,
): { accounts: AccountRow[]; rows: MovementRow[] } {
  const accounts = new Map<string, AccountRow>();
  const rows = movements.map((movement, line) => {
    const from = accountRow(movement.from);
    const to = accountRow(movement.to);
    accounts.set(keyOf(from), from).set(keyOf(to), to);
    const { touched } = context;
    touch(context, movement.from, (id) => (isOnlyMoved ? touched.lotElsewhere(id) : touched.lotWithFewer(id)));
    touch(context, movement.to, (id) => (isOnlyMoved ? touched.lotElsewhere(id) : touched.lot(id)));
    return {
      line,
      from: { kind: from.kind, holder: from.holder, standing: from.standing },
      to: { kind: to.kind, holder: to.holder, standing: to.standing },
      fromUnits: movement.fromUnits,
      toUnits: movement.toUnits,
    };
  });
  return { accounts: [...accounts.values()], rows };
}

export function requirePast(context: { today: string }, day: string, field = 'happenedOn'): void {
  if (day > context.today) refuse('day-in-future', { day, today: context.today }, field);
}

/** Refuses a day before what it is about began: a batch cannot be counted before it was started. */
export function requireSince(day: string, earliest: string, field = 'happenedOn'): void {
  if (day < earliest) refuse('day-too-early', { day, earliest }, field);
}

function touch(context: CommandContext, account: AccountRef, touchLot: (lotId: string) => void): void {
  const holder = holderOf(account);
  if (holder?.kind === 'lot') touchLot(holder.id);
  if (holder?.kind === 'batch') context.touched.batch(holder.id);
  if (account.kind === 'staged') context.touched.line(account.lineId);
}

const keyOf = (account: AccountRow) => `${account.kind}/${account.holder}/${account.standing}`;

function accountRow(account: AccountRef): AccountRow {
  const empty = { lotId: null, batchId: null, placeId: null, lineId: null, outside: null };
  if (account.kind === 'outside')
    return { ...empty, kind: 'outside', holder: 'outside', standing: account.outside, outside: account.outside };
  if (account.kind === 'staged')
    return {
      ...empty,
      kind: 'staged',
      holder: account.lotId,
      standing: account.lineId,
      lotId: account.lotId,
      lineId: account.lineId,
    };
  if ('batchId' in account)
    return {
      ...empty,
      kind: 'place',
      holder: account.batchId,
      standing: account.placeId,
      batchId: account.batchId,
      placeId: account.placeId,
    };
  return {
    ...empty,
    kind: 'place',
    holder: account.lotId,
    standing: account.placeId,
    lotId: account.lotId,
    placeId: account.placeId,
  };
}
