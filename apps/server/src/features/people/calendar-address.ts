import { randomBytes } from 'node:crypto';
import type { Role } from '@rootclock/domain';
import type { Database } from '../../db/pool.ts';
import type { Caller } from '../../trpc/operation.ts';
import { tokenHash } from './door/sessions.ts';
import { findTokenHolder } from './door/store.ts';
import { calendarOpenedAt, openCalendar, revokeCalendar } from './store.ts';

/** A calendar is subscribed to once and then forgotten: its address ends when it is revoked, and not on a day nobody remembers. */
const CALENDAR_YEARS = 100;

/** These stand beside the runner, as sessions do: its log keeps what each command answered, and this secret must be kept nowhere. */
export async function createCalendar(
  database: Database,
  { nurseryId, personId }: Caller,
  now: Date,
): Promise<{ path: string }> {
  const secret = randomBytes(32).toString('base64url');
  const expiresAt = new Date(now);
  expiresAt.setUTCFullYear(now.getUTCFullYear() + CALENDAR_YEARS);
  await openCalendar(database, { hash: tokenHash(secret), nurseryId, personId, openedAt: now, expiresAt });
  return { path: `/calendar/${secret}.ics` };
}

export async function endCalendar(database: Database, { personId }: Caller, now: Date): Promise<{ revoked: true }> {
  await revokeCalendar(database, personId, now);
  return { revoked: true };
}

/** Whether there is an address, and since when. The address itself was shown once and cannot be shown again. */
export async function readCalendarAddress(
  database: Database,
  { personId }: Caller,
  now: Date,
): Promise<{ openedAt: string | null }> {
  return { openedAt: (await calendarOpenedAt(database, personId, now))?.toISOString() ?? null };
}

/** Whose calendar a secret opens: nobody's once it was revoked, or its person has left the nursery. */
export async function calendarHolder(database: Database, secret: string, now: Date): Promise<Caller | null> {
  const holder = await findTokenHolder(database, tokenHash(secret), 'calendar', now);
  if (!holder) return null;
  const { isSeen: _, ...person } = holder;
  return { ...person, role: person.role as Role };
}
