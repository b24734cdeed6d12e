// The book that a generated history is written into: accounts with their balances, entries in the order of days, their commands and movements.
import { createHash } from 'node:crypto';
import { type EntryKind, fromDayNumber, type Outside } from '@rootclock/domain';
import type { Sheets } from './copy.ts';

export interface Account {
  id: string;
  kind: 'place' | 'staged' | 'outside';
  lotId: string | null;
  batchId: string | null;
  placeId: string | null;
  lineId: string | null;
  outside: Outside | null;
  units: number;
}

export interface Move {
  from: Account;
  to: Account;
  fromUnits: number;
  toUnits: number;
}

export interface Entry {
  id: string;
  /** Days since 1970-01-01. */
  day: number;
  kind: EntryKind;
  /** The command that a person would have given. */
  command: string;
  moves: Move[];
  cause?: string;
  reversesId?: string;
  details?: Record<string, unknown>;
  subjects?: { kind: 'lot' | 'batch' | 'place'; id: string }[];
}

const days = new Map<number, string>();
/** The day as it is written, each made once: millions of rows share few days. */
export function written(day: number): string {
  const known = days.get(day);
  if (known) return known;
  const made = fromDayNumber(day);
  days.set(day, made);
  return made;
}

/** The id that `account_key` of the database makes of the same three parts. */
function accountId(kind: string, holder: string, standing: string): string {
  const hex = createHash('md5').update(`${kind}/${holder}/${standing}`).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

const none = { lotId: null, batchId: null, placeId: null, lineId: null, outside: null, units: 0 };
export const lotAt = (lotId: string, placeId: string): Account => ({
  ...none,
  id: accountId('place', lotId, placeId),
  kind: 'place',
  lotId,
  placeId,
});
export const batchAt = (batchId: string, placeId: string): Account => ({
  ...none,
  id: accountId('place', batchId, placeId),
  kind: 'place',
  batchId,
  placeId,
});
export const stagedFor = (lotId: string, lineId: string): Account => ({
  ...none,
  id: accountId('staged', lotId, lineId),
  kind: 'staged',
  lotId,
  lineId,
});

export class Ledger {
  /** Movements written down so far. */
  moves = 0;
  private version: number;
  private flushedBefore = 0;
  private readonly byDay = new Map<number, Entry[]>();
  private readonly outsides = new Map<Outside, Account>();
  private readonly entry;
  private readonly command;
  private readonly movement;
  private readonly subject;
  private readonly account;
  private readonly lineage;

  constructor(
    sheets: Sheets,
    private readonly nurseryId: string,
    private readonly people: readonly string[],
    firstVersion: number,
  ) {
    this.version = firstVersion - 1;
    this.entry = sheets.open(
      'entry',
      'nursery_id, id, version, kind, happened_on, recorded_at, person_id, reverses_id, cause, details',
    );
    this.command = sheets.open('command', 'nursery_id, id, version, name, person_id, input_hash, answer, recorded_at');
    this.movement = sheets.open(
      'movement',
      'nursery_id, entry_id, line, from_account_id, to_account_id, from_units, to_units',
    );
    this.subject = sheets.open('entry_subject', 'nursery_id, entry_id, subject_id, subject_kind');
    this.account = sheets.open('account', 'nursery_id, id, kind, lot_id, batch_id, place_id, line_id, outside, units');
    this.lineage = sheets.open('lineage', 'nursery_id, child_lot_id, parent_id, parent_kind');
  }

  get lastVersion(): number {
    return this.version;
  }

  outside(name: Outside): Account {
    const known = this.outsides.get(name) ?? {
      ...none,
      id: accountId('outside', 'outside', name),
      kind: 'outside',
      outside: name,
    };
    this.outsides.set(name, known);
    return known;
  }

  /** Books an entry and moves its units. Its rows are written when every entry of an earlier day is known. */
  record(entry: Entry): void {
    if (entry.day < this.flushedBefore)
      throw new Error(`an entry of ${written(entry.day)} comes after that day was written`);
    for (const { from, to, fromUnits, toUnits } of entry.moves) {
      if (from.kind !== 'outside') from.units -= fromUnits;
      if (to.kind !== 'outside') to.units += toUnits;
      if (from.units < 0) throw new Error(`the generated ${entry.kind} takes more than is there`);
    }
    this.moves += entry.moves.length;
    const same = this.byDay.get(entry.day);
    if (same) same.push(entry);
    else this.byDay.set(entry.day, [entry]);
  }

  /** The accounts of a lot or batch, whose whole life is known. */
  close(accounts: Iterable<Account>): void {
    for (const a of accounts)
      this.account(this.nurseryId, a.id, a.kind, a.lotId, a.batchId, a.placeId, a.lineId, a.outside, a.units);
  }

  descends(childLotId: string, parentId: string, parentKind: 'lot' | 'batch'): void {
    this.lineage(this.nurseryId, childLotId, parentId, parentKind);
  }

  /** Writes down all entries of days before this one, in the order of days, as a nursery's own commands would have come. */
  flushBefore(day: number): void {
    const due = [...this.byDay.keys()].filter((each) => each < day).sort((a, b) => a - b);
    for (const each of due) {
      for (const entry of this.byDay.get(each) ?? []) this.write(entry);
      this.byDay.delete(each);
    }
    this.flushedBefore = Math.max(this.flushedBefore, day);
  }

  finish(): void {
    this.flushBefore(Number.MAX_SAFE_INTEGER);
    this.close(this.outsides.values());
  }

  private write({ id, day, kind, command, moves, cause, reversesId, details, subjects }: Entry): void {
    this.version++;
    const person = this.people[this.version % this.people.length] ?? null;
    const on = written(day);
    const recordedAt = `${on} 22:${String(this.version % 60).padStart(2, '0')}:00+00`;
    this.entry(
      this.nurseryId,
      id,
      this.version,
      kind,
      on,
      recordedAt,
      person,
      reversesId ?? null,
      cause ?? null,
      details ? JSON.stringify(details) : '{}',
    );
    // As long as a true hash of the body; nobody sends these commands again.
    this.command(
      this.nurseryId,
      id,
      this.version,
      command,
      person,
      (id + id).replaceAll('-', ''),
      `{"entryId": "${id}"}`,
      recordedAt,
    );
    for (const subject of subjects ?? []) this.subject(this.nurseryId, id, subject.id, subject.kind);
    moves.forEach(({ from, to, fromUnits, toUnits }, line) =>
      this.movement(this.nurseryId, id, line, from.id, to.id, fromUnits, toUnits),
    );
  }
}
