import { randomUUID } from 'node:crypto';
import { firstSeasonEnd, type Role } from '@rootclock/domain';
import { IANAZone } from 'luxon';
import { dayIn } from '../../db/day-in.ts';
import { Refusal, refuse } from '../../refusal.ts';
import type { Caller } from '../../trpc/operation.ts';
import { type Guesser, guessing, WrongGuess } from './door/guessing.ts';
import { openSession } from './door/sessions.ts';
import { isPassword, passwordHash } from './passwords/hashing.ts';
import { requireNoKnownName, requireUncommon } from './passwords/judge.ts';
import { requireSecondStep } from './second-step/second-step.ts';
import { claimFirstOwner, setupFacts } from './store.ts';

type Person = Pick<Caller, 'nurseryId' | 'personId' | 'personName' | 'role'>;

/** Opens a session for whoever knows the password of an address, and has the code where the person is asked for one. */
export async function signIn(
  guesser: Guesser,
  { email, password, code }: { email: string; password: string; code?: string | undefined },
): Promise<void> {
  const person = await guessing(
    guesser,
    email,
    async ({ personId, personName, nurseryId, role, passwordHash: stored }, asker): Promise<Person> => {
      const matches = await isPassword(password, stored, asker);
      if (!matches || !personId || !nurseryId)
        throw new WrongGuess(new Refusal('wrong-sign-in', undefined, 'password'));
      await requireSecondStep(guesser.database, personId, code, guesser.now);
      return { personId, nurseryId, personName: personName ?? '', role: role as Role };
    },
  );
  await openSession(guesser.database, person, guesser.door, guesser.now);
}

/**
 * Lets a password be changed by whoever knows the present one, guesses being limited as at the door. The change ends every session of
 * theirs, so that a copied one is worth nothing; the one they work in is opened anew.
 */
export async function changePasswordOf(
  guesser: Guesser,
  caller: Caller,
  input: { currentPassword: string; password: string },
  change: (passwords: { knownHash: string; passwordHash: string }) => Promise<unknown>,
): Promise<void> {
  await requireUncommon(input.password);
  await guessing(guesser, caller.email, async ({ passwordHash: knownHash }) => {
    if (knownHash === null || !(await isPassword(input.currentPassword, knownHash, 'known')))
      throw new WrongGuess(new Refusal('wrong-password', undefined, 'currentPassword'));
    await change({ knownHash, passwordHash: await passwordHash(input.password) });
  });
  await openSession(guesser.database, caller, guesser.door, guesser.now);
}

export interface FirstOwner {
  nurseryName: string;
  zone: string;
  name: string;
  email: string;
  password: string;
}

/** Makes the nursery of an empty server and its owner. Where there is one already nothing is hashed any more. */
export async function createFirstOwner(
  { database, now }: Pick<Guesser, 'database' | 'now'>,
  input: FirstOwner,
): Promise<Caller> {
  if (!IANAZone.isValidZone(input.zone))
    throw new Refusal('invalid-input', { issues: [{ path: 'zone', problem: 'not-a-choice' }] }, 'zone');
  if ((await setupFacts(database)).anyNursery) refuse('nursery-exists', undefined);
  await requireUncommon(input.password);
  requireNoKnownName(input.password, input);
  const nurseryId = randomUUID();
  const personId = randomUUID();
  const seasonEndOn = firstSeasonEnd(dayIn(now, input.zone));
  const isFirst = await claimFirstOwner(database, {
    ...input,
    nurseryId,
    personId,
    seasonEndOn,
    passwordHash: await passwordHash(input.password, 'strangers'),
  });
  if (!isFirst) refuse('nursery-exists', undefined);
  return { nurseryId, personId, personName: input.name, email: input.email, role: 'owner' };
}
