import type { people } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { generateSecret, generateURI } from 'otplib';
import type { Database } from '../../../db/pool.ts';
import { requireRole } from '../../../db/runner.ts';
import { found, Refusal, refuse } from '../../../refusal.ts';
import type { Caller } from '../../../trpc/operation.ts';
import { type Guesser, guessing, WrongGuess } from '../door/guessing.ts';
import { isPassword } from '../passwords/hashing.ts';
import { plainCode, recoveryCodes, recoveryHash, stepOf } from './codes.ts';
import {
  confirmSecondStep,
  deleteSecondStep,
  insertSecondStep,
  loadSecondStep,
  takeRecoveryCode,
  takeStep,
} from './store.ts';

// These stand beside the runner, as sessions do: its log keeps what each command answered, and secrets must be kept nowhere else.

/**
 * Lets only whoever has the app, or a recovery code, go on to a person who is asked for codes. A wrong one is a wrong guess; asking without
 * one is none, since the password was right.
 */
export async function requireSecondStep(
  database: Database,
  personId: string,
  code: string | undefined,
  now: Date,
): Promise<void> {
  const step = await loadSecondStep(database, personId);
  if (!step?.confirmedAt) return;
  if (!code) throw new Refusal('second-step-needed', undefined, 'code');
  const plain = plainCode(code);
  const halfMinute = stepOf(step.secret, plain, now, step.lastStep);
  const isTaken =
    halfMinute === null
      ? await takeRecoveryCode(database, personId, recoveryHash(plain), now)
      : await takeStep(database, personId, halfMinute);
  if (!isTaken) throw new WrongGuess(new Refusal('wrong-code', undefined, 'code'));
}

export async function readSecondStep(database: Database, { personId }: Caller): Promise<people.SecondStepState> {
  const step = await loadSecondStep(database, personId);
  return { since: step?.confirmedAt?.toISOString() ?? null, codesLeft: step?.confirmedAt ? step.codesLeft : 0 };
}

/** Asks for the present password, guesses being limited as at the door. */
async function withPassword<Answer>(
  guesser: Guesser,
  caller: Caller,
  password: string,
  work: () => Promise<Answer>,
): Promise<Answer> {
  return guessing(guesser, caller.email, async ({ passwordHash }) => {
    if (!(await isPassword(password, passwordHash, 'known')))
      throw new WrongGuess(new Refusal('wrong-password', undefined, 'password'));
    return work();
  });
}

/** A new secret for the person's app, shown this once; nobody is asked for codes until one has shown that the app has it. */
export async function beginSecondStep(
  guesser: Guesser,
  caller: Caller,
  password: string,
): Promise<{ secret: string; address: string }> {
  requireRole(OWNER, caller.role);
  return withPassword(guesser, caller, password, async () => {
    const secret = generateSecret();
    if (!(await insertSecondStep(guesser.database, caller.personId, secret))) refuse('second-step-changed', undefined);
    return { secret, address: generateURI({ issuer: 'Rootclock', label: caller.email, secret }) };
  });
}

/** Turns the second step on with a first code of the app. Answers the recovery codes, which are kept as hashes only. */
export async function finishSecondStep(
  guesser: Guesser,
  caller: Caller,
  code: string,
): Promise<{ recoveryCodes: string[] }> {
  requireRole(OWNER, caller.role);
  return guessing(guesser, caller.email, async () => {
    const step = found(await loadSecondStep(guesser.database, caller.personId), 'second step');
    if (step.confirmedAt !== null) refuse('second-step-changed', undefined);
    const halfMinute = stepOf(step.secret, plainCode(code), guesser.now, step.lastStep);
    if (halfMinute === null) throw new WrongGuess(new Refusal('wrong-code', undefined, 'code'));
    const codes = recoveryCodes();
    const isOn = await confirmSecondStep(guesser.database, caller.personId, {
      secret: step.secret,
      step: halfMinute,
      codeHashes: codes.map(recoveryHash),
      at: guesser.now,
    });
    if (!isOn) refuse('second-step-changed', undefined);
    return { recoveryCodes: codes };
  });
}

/** Turns it off for whoever has both the password and a code. */
export async function endSecondStep(
  guesser: Guesser,
  caller: Caller,
  { password, code }: { password: string; code: string },
): Promise<{ on: false }> {
  return withPassword(guesser, caller, password, async () => {
    await requireSecondStep(guesser.database, caller.personId, code, guesser.now);
    await deleteSecondStep(guesser.database, caller.personId);
    return { on: false };
  });
}
