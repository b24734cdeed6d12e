import { empty, join, raw, sql, type Sql } from '../../../db/sql.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import type { EntryDraft } from './entry-draft.ts';

/** An account as it is written: kind, holder and standing together make its id. */
export interface AccountRow {
  kind: 'place' | 'staged' | 'outside';
  holder: string;
  standing: string;
  lotId: string | null;
  batchId: string | null;
  placeId: string | null;
  lineId: string | null;
  outside: string | null;
}

interface AccountKey {
  kind: string;
  holder: string;
  standing: string;
}
export interface MovementRow {
  line: number;
  from: AccountKey;
  to: AccountKey;
  fromUnits: number;
  toUnits: number;
}

type Subjects = readonly { kind: string; id: string }[];

const entryRow = ({ nurseryId, commandId, version, personId, now }: CommandContext, draft: EntryDraft) => sql`
  INSERT INTO entry (nursery_id, id, version, kind, happened_on, recorded_at, person_id, reverses_id, cause, note, details)
  VALUES (${nurseryId}::uuid, ${commandId}::uuid, ${version}, ${draft.kind}, ${draft.happenedOn}::date, ${now}, ${personId}::uuid,
          ${draft.reversesId ?? null}::uuid, ${draft.cause ?? null}, ${draft.note ?? ''}, ${JSON.stringify(draft.details ?? {})}::jsonb)`;

const subjectRows = ({ nurseryId, commandId }: CommandContext, subjects: Subjects) => sql`
  INSERT INTO entry_subject (nursery_id, entry_id, subject_id, subject_kind)
  SELECT ${nurseryId}::uuid, ${commandId}::uuid, s.id, s.kind FROM jsonb_to_recordset(${JSON.stringify(subjects)}::jsonb) AS s (id uuid, kind text)`;

const openedAccounts = ({ nurseryId }: CommandContext, accounts: readonly AccountRow[]) => sql`
  INSERT INTO account (nursery_id, id, kind, lot_id, batch_id, place_id, line_id, outside)
  SELECT ${nurseryId}::uuid, account_key(a.kind, a.holder, a.standing), a.kind, a."lotId", a."batchId", a."placeId", a."lineId", a.outside
    FROM jsonb_to_recordset(${JSON.stringify(accounts)}::jsonb)
      AS a (kind text, holder text, standing text, "lotId" uuid, "batchId" uuid, "placeId" uuid, "lineId" uuid, outside text)
  ON CONFLICT DO NOTHING`;

const movementRows = ({ nurseryId }: CommandContext, entryId: string, movements: readonly MovementRow[]) => sql`
  INSERT INTO movement (nursery_id, entry_id, line, from_account_id, to_account_id, from_units, to_units)
  SELECT ${nurseryId}::uuid, ${entryId}::uuid, m.line, account_key(m."from" ->> 'kind', m."from" ->> 'holder', m."from" ->> 'standing'),
         account_key(m."to" ->> 'kind', m."to" ->> 'holder', m."to" ->> 'standing'), m."fromUnits", m."toUnits"
    FROM jsonb_to_recordset(${JSON.stringify(movements)}::jsonb) AS m (line int, "from" jsonb, "to" jsonb, "fromUnits" int, "toUnits" int)`;

/** Statements that write what belongs to an entry, as parts of the one that writes it. */
const parts = (beside: readonly Sql[]): Sql =>
  beside.length === 0 ? empty : sql`, ${join(beside.map((part, nth) => sql`${raw(`beside_${nth}`)} AS (${part})`))}`;

export async function insertEntry(
  context: CommandContext,
  draft: EntryDraft,
  subjects: Subjects,
  beside: readonly Sql[],
): Promise<void> {
  await context.tx.run`WITH written AS (${entryRow(context, draft)})${parts(beside)} ${subjectRows(context, subjects)}`;
}

/** Opens the accounts that are new and moves the units; the database keeps the balances in the same statement. */
export async function insertMovements(
  context: CommandContext,
  entryId: string,
  accounts: readonly AccountRow[],
  movements: readonly MovementRow[],
): Promise<void> {
  await context.tx
    .run`WITH opened AS (${openedAccounts(context, accounts)}) ${movementRows(context, entryId, movements)}`;
}

/** Both at once, which saves the commonest commands a way to the database and back. */
export async function insertEntryWithMovements(
  context: CommandContext,
  draft: EntryDraft,
  subjects: Subjects,
  accounts: readonly AccountRow[],
  movements: readonly MovementRow[],
  beside: readonly Sql[],
): Promise<void> {
  await context.tx.run`
    WITH written AS (${entryRow(context, draft)}), told AS (${subjectRows(context, subjects)}), opened AS (${openedAccounts(context, accounts)})${parts(beside)}
    ${movementRows(context, context.commandId, movements)}`;
}

// Sources have codes of the same run, and come before stock.
export { nextCodes } from '../../sources/codes/store.ts';
