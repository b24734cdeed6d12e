import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';
import { firstSeasonEnd, type Role } from '@rootclock/domain';
import { IANAZone } from 'luxon';
import type { Database } from '../../db/pool.ts';
import { dayIn } from '../../db/runner.ts';
import { Refusal, refuse } from '../../refusal.ts';
import type { Caller } from '../../trpc/operation.ts';
import { claimFirstOwner, countFailures, findPerson, findTokenHolder, noteFailure, openToken, revokeToken } from './store.ts';

const SESSION_DAYS = 30;
const FAILURE_WINDOW_MINUTES = 15;
/** An account is guessed at from many addresses, an address guesses at many accounts: each has its own limit. */
const MOST_FAILURES = { account: 8, address: 40 };

export const tokenHash = (token: string) => createHash('sha256').update(token).digest();
export const passwordHash = (password: string) => hash(password);

// Verified against when nobody has the address, so that the time taken does not tell which addresses exist.
const nobodysHash = passwordHash(randomUUID());

export interface OpenedSession {
  token: string;
  expiresAt: Date;
}

/** What a guess at a password is counted by. Refuses when there were too many already. */
async function requireFewFailures(database: Database, email: string, address: string, now: Date): Promise<string[]> {
  const subjects = { account: `account:${email.toLowerCase()}`, address: `address:${address}` };
  const failures = await countFailures(database, Object.values(subjects), new Date(now.getTime() - FAILURE_WINDOW_MINUTES * 60_000));
  if ((failures.get(subjects.account) ?? 0) >= MOST_FAILURES.account || (failures.get(subjects.address) ?? 0) >= MOST_FAILURES.address) {
    refuse('too-many-sign-ins', { waitMinutes: FAILURE_WINDOW_MINUTES });
  }
  return Object.values(subjects);
}

export async function signIn(database: Database, input: { email: string; password: string }, address: string, now: Date): Promise<OpenedSession> {
  const subjects = await requireFewFailures(database, input.email, address, now);
  const person = await findPerson(database, input.email);
  const matches = await verify(person?.passwordHash ?? (await nobodysHash), input.password);
  if (!person || !matches) {
    await noteFailure(database, subjects, now);
    throw new Refusal('wrong-sign-in', undefined, 'password');
  }
  return openSession(database, person, now);
}

/**
 * Lets a password be changed by whoever knows the present one, guesses being limited as at the door. The change ends every session of
 * theirs, so that a copied one is worth nothing; the one they work in is opened anew.
 */
export async function changePasswordOf(database: Database, caller: Caller, address: string, now: Date, change: () => Promise<unknown>): Promise<OpenedSession> {
  const subjects = await requireFewFailures(database, caller.email, address, now);
  try {
    await change();
  } catch (error) {
    if (error instanceof Refusal && error.code === 'wrong-password') await noteFailure(database, subjects, now);
    throw error;
  }
  return openSession(database, caller, now);
}

async function openSession(database: Database, person: { nurseryId: string; personId: string }, now: Date): Promise<OpenedSession> {
  const token = randomBytes(32).toString('base64url');
  const expiresAt = new Date(now.getTime() + SESSION_DAYS * 86_400_000);
  await openToken(database, { hash: tokenHash(token), kind: 'session', ...person, openedAt: now, expiresAt });
  return { token, expiresAt };
}

export async function callerOf(database: Database, token: string | null, now: Date): Promise<Caller | null> {
  if (!token) return null;
  const holder = await findTokenHolder(database, tokenHash(token), 'session', now);
  return holder ? { ...holder, role: holder.role as Role } : null;
}

export const signOut = (database: Database, token: string, now: Date) => revokeToken(database, tokenHash(token), now);

export interface FirstOwner {
  nurseryName: string;
  zone: string;
  name: string;
  email: string;
  password: string;
}

export async function createFirstOwner(database: Database, input: FirstOwner, now: Date): Promise<{ session: OpenedSession; owner: Caller }> {
  if (!IANAZone.isValidZone(input.zone)) throw new Refusal('invalid-input', { issues: [{ path: 'zone', problem: 'not-a-choice' }] }, 'zone');
  const nurseryId = randomUUID();
  const personId = randomUUID();
  const seasonEndOn = firstSeasonEnd(dayIn(now, input.zone));
  const isFirst = await claimFirstOwner(database, { ...input, nurseryId, personId, seasonEndOn, passwordHash: await passwordHash(input.password) });
  if (!isFirst) refuse('nursery-exists', undefined);
  return { session: await openSession(database, { nurseryId, personId }, now), owner: { nurseryId, personId, personName: input.name, email: input.email, role: 'owner' } };
}
