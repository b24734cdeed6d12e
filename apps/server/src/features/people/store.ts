import { ROLES, type Role } from '@rootclock/domain';
import * as z from 'zod/mini';
import { columns, editedSettings } from '../../db/editions.ts';
import type { Tx } from '../../db/pool.ts';
import { found } from '../../refusal.ts';
import { storedRow, type CommandContext, type Edits, type ReadContext } from '../../trpc/operation.ts';

// People and tokens are reached only through the database's own functions: they stand outside row security.

/** Opens a person's calendar address and ends the one before. */
export async function openCalendar(
  tx: Tx,
  token: { hash: Buffer; nurseryId: string; personId: string; openedAt: Date; expiresAt: Date },
): Promise<void> {
  await tx.run`SELECT open_calendar(${token.hash}, ${token.nurseryId}::uuid, ${token.personId}::uuid, ${token.openedAt}, ${token.expiresAt})::text`;
}

export async function revokeCalendar(tx: Tx, personId: string, at: Date): Promise<void> {
  await tx.run`SELECT revoke_calendar(${personId}::uuid, ${at})::text`;
}

const calendarOpened = z.strictObject({ openedAt: z.date() });

export async function calendarOpenedAt(tx: Tx, personId: string, at: Date): Promise<Date | null> {
  const row = await tx.row(
    calendarOpened,
  )`SELECT opened_at AS "openedAt" FROM calendar_opened_at(${personId}::uuid, ${at}) opened_at`;
  return row?.openedAt ?? null;
}

const claim = z.strictObject({ claimed: z.boolean() });

export async function claimFirstOwner(
  tx: Tx,
  owner: {
    nurseryId: string;
    nurseryName: string;
    zone: string;
    seasonEndOn: string;
    personId: string;
    name: string;
    email: string;
    passwordHash: string;
  },
): Promise<boolean> {
  const row = await tx.row(claim)`
    SELECT create_first_owner(${owner.nurseryId}::uuid, ${owner.nurseryName}, ${owner.zone}, ${owner.seasonEndOn}::date, ${owner.personId}::uuid, ${owner.name}, ${owner.email}, ${owner.passwordHash}) AS claimed`;
  return row?.claimed ?? false;
}

const setupState = z.strictObject({ anyNursery: z.boolean(), demo: z.boolean() });

export async function setupFacts(tx: Tx): Promise<{ anyNursery: boolean; demo: boolean }> {
  const row = await tx.row(setupState)`SELECT any_nursery() AS "anyNursery", demo_nursery() AS demo`;
  return row ?? { anyNursery: false, demo: false };
}

export interface Member {
  id: string;
  edition: number;
  name: string;
  email: string;
  role: Role;
  endedAt: string | null;
}

const storedMember = z.strictObject({
  id: z.string(),
  edition: z.number(),
  name: z.string(),
  email: z.string(),
  role: z.enum(ROLES),
  endedAt: z.nullable(z.date()),
});

/** Everybody who is or was of this nursery, by name. */
export async function loadMembers({ tx }: ReadContext): Promise<Member[]> {
  const rows = await tx.rows(storedMember)`
    SELECT p.person_id::text AS id, e.edition, p.name, p.email, p.role, p.ended_at AS "endedAt" FROM nursery_people() p JOIN person_editions() e ON e.person_id = p.person_id
     ORDER BY p.ended_at IS NOT NULL, p.name, p.person_id`;
  return rows.map((row) => ({ ...row, endedAt: row.endedAt?.toISOString() ?? null }));
}

const addition = z.strictObject({ added: z.boolean() });

/** False when somebody has the address already. */
export async function addMember(
  { tx }: CommandContext,
  person: { id: string; name: string; email: string; role: Role; passwordHash: string },
): Promise<boolean> {
  const row = await tx.row(addition)`
    SELECT add_nursery_person(${person.id}::uuid, ${person.name}, ${person.email}, ${person.passwordHash}, ${person.role}) AS added`;
  return row?.added ?? false;
}

/** With a new password, or an end, every session of the person is over. */
export async function changeMember(
  { tx, now }: CommandContext,
  person: { id: string; name: string; role: Role; endsAt: Date | null; passwordHash: string | null },
): Promise<void> {
  await tx.run`
    SELECT change_nursery_person(${person.id}::uuid, ${person.name}, ${person.role}, ${person.endsAt}::timestamptz, ${person.passwordHash}::text, ${now}::timestamptz)::text`;
}

const replacement = z.strictObject({ replaced: z.boolean() });

/** Sets a person's own new password where the one it was checked against is still the present one, and ends every session of theirs. */
export async function replaceOwnPassword(
  { tx, personId, now }: CommandContext,
  knownHash: string,
  passwordHash: string,
): Promise<boolean> {
  const row = await tx.row(
    replacement,
  )`SELECT replace_own_password(${personId}::uuid, ${knownHash}, ${passwordHash}, ${now}::timestamptz) AS replaced`;
  return row?.replaced ?? false;
}

const namedNursery = z.strictObject({ name: z.string() });

export async function nameOfNursery({ tx, nurseryId }: ReadContext): Promise<string> {
  const row = await tx.row(namedNursery)`SELECT name FROM nursery WHERE id = ${nurseryId}::uuid`;
  return row?.name ?? '';
}

export interface NurserySettings {
  name: string;
  zone: string;
  region: string | null;
  units: string;
  noticeDays: number;
  seasonEndOn: string;
}

export async function updateNursery(
  { tx, nurseryId }: CommandContext,
  { name, zone, region, units, noticeDays, seasonEndOn }: NurserySettings,
): Promise<void> {
  await tx.run`
    UPDATE nursery SET name = ${name}, zone = ${zone}, region = ${region}, units = ${units}, notice_days = ${noticeDays}::int, season_end_on = ${seasonEndOn}::date
     WHERE id = ${nurseryId}::uuid`;
}

const seasonEnd = z.strictObject({ seasonEndOn: z.string() });

/** Answers when the nursery's season ends. */
export async function noteRolledDay({ tx, nurseryId, today }: CommandContext): Promise<string> {
  const row = await tx.row(seasonEnd)`
    UPDATE nursery SET rolled_on = ${today}::date WHERE id = ${nurseryId}::uuid RETURNING season_end_on::text AS "seasonEndOn"`;
  if (!row) throw new Error('the nursery of this transaction is gone');
  return row.seasonEndOn;
}

export async function setSeasonEnd({ tx, nurseryId }: CommandContext, endOn: string): Promise<void> {
  await tx.run`UPDATE nursery SET season_end_on = ${endOn}::date WHERE id = ${nurseryId}::uuid`;
}

export const nurseryEdits = editedSettings(columns('name', 'zone', 'region', 'units', 'noticeDays', 'seasonEndOn'));

const personEdition = z.strictObject({ edition: z.nullable(z.number()) });

/** What an owner says of a person. Passwords are never shown, so that two new ones are no clash. */
export const personEdits: Edits<{ personId: string }> = {
  partial: false,
  load: async ({ tx }, { personId }) => {
    const row = await tx.row(storedRow)`
      SELECT e.edition, jsonb_build_object('name', p.name, 'role', p.role, 'ended', p.ended_at IS NOT NULL) AS fields
        FROM nursery_people() p JOIN person_editions() e ON e.person_id = p.person_id WHERE p.person_id = ${personId}::uuid`;
    return row ?? null;
  },
  raise: async ({ tx, version }, { personId }, from) => {
    const row = await tx.row(
      personEdition,
    )`SELECT raise_person_edition(${personId}::uuid, ${from}::int, ${version}::int) AS edition`;
    return found(row?.edition, 'person', 'personId');
  },
};
