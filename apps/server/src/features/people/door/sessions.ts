import { createHash, randomBytes } from 'node:crypto';
import type { people } from '@rootclock/contracts';
import type { Role } from '@rootclock/domain';
import Bowser from 'bowser';
import type { Database } from '../../../db/pool.ts';
import type { Door } from '../../../trpc/door.ts';
import type { Caller } from '../../../trpc/operation.ts';
import {
  endSessions,
  findTokenHolder,
  insertSession,
  loadSessions,
  noteSeen,
  revokeToken,
  type SessionFacts,
} from './store.ts';

const DAY_SECONDS = 86_400;
const SESSION_SECONDS = 30 * DAY_SECONDS;
/** A device stays known from each sign-in on for about a year. */
const DEVICE_SECONDS = 400 * DAY_SECONDS;
/** More of what a browser says of itself is not needed to call it by name. */
const AGENT_LETTERS = 300;

export const tokenHash = (token: string) => createHash('sha256').update(token).digest();
export const deviceKeyOf = ({ deviceSecret }: Door) => (deviceSecret === null ? null : tokenHash(deviceSecret));

/** Opens a session on the device that asks and makes the device known to the door; the session that was open there before ends. */
export async function openSession(
  database: Database,
  { nurseryId, personId }: Pick<Caller, 'nurseryId' | 'personId'>,
  door: Door,
  now: Date,
): Promise<void> {
  const token = randomBytes(32).toString('base64url');
  const device = door.deviceSecret ?? randomBytes(32).toString('base64url');
  const after = (seconds: number) => new Date(now.getTime() + seconds * 1000);
  await insertSession(database, {
    hash: tokenHash(token),
    beforeHash: door.sessionToken === null ? null : tokenHash(door.sessionToken),
    deviceKey: tokenHash(device),
    nurseryId,
    personId,
    agent: door.agent.slice(0, AGENT_LETTERS),
    openedAt: now,
    expiresAt: after(SESSION_SECONDS),
    deviceExpiresAt: after(DEVICE_SECONDS),
  });
  door.open({ token, seconds: SESSION_SECONDS, device, deviceSeconds: DEVICE_SECONDS });
}

export async function callerOf(database: Database, token: string | null, now: Date): Promise<Caller | null> {
  if (!token) return null;
  const hash = tokenHash(token);
  const holder = await findTokenHolder(database, hash, 'session', now);
  if (!holder) return null;
  const { isSeen, ...person } = holder;
  if (!isSeen) await noteSeen(database, hash, now);
  return { ...person, role: person.role as Role };
}

export async function signOut(database: Database, door: Door, now: Date): Promise<void> {
  if (door.sessionToken) await revokeToken(database, tokenHash(door.sessionToken), now);
  door.close();
}

const asking = ({ sessionToken }: Door) => (sessionToken === null ? null : tokenHash(sessionToken));
/** To the hour, which is never before it was opened. */
const lastSeen = ({ openedAt, seenAt }: SessionFacts) =>
  new Date(Math.max(openedAt.getTime(), Math.floor(seenAt.getTime() / 3_600_000) * 3_600_000)).toISOString();

/** Where a person is signed in, this session first. */
export async function listSessions(
  database: Database,
  { personId }: Caller,
  door: Door,
  now: Date,
): Promise<people.SessionRow[]> {
  const sessions = await loadSessions(database, personId, asking(door), now);
  return sessions.map((session) => {
    const { id, agent, openedAt, here } = session;
    const { browser, os } =
      agent === '' ? ({ browser: {}, os: {} } as Partial<ReturnType<typeof Bowser.parse>>) : Bowser.parse(agent);
    return {
      id,
      browser: browser?.name || null,
      system: os?.name || null,
      openedAt: openedAt.toISOString(),
      seenAt: lastSeen(session),
      here,
    };
  });
}

/** Ends one session of the person who asks, or for null all but this one. Ending what has ended, or another's, changes nothing. */
export async function endSession(
  database: Database,
  { personId }: Caller,
  sessionId: string | null,
  door: Door,
  now: Date,
): Promise<{ ended: true }> {
  await endSessions(database, personId, sessionId, asking(door), now);
  return { ended: true };
}
