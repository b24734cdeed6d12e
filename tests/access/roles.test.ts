import { onceOfGardens } from '@rootclock/server/features/moved';
import { ROLES, type Role } from '@rootclock/domain';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { passwordHash } from '../../apps/server/src/features/people/passwords/hashing.ts';
import { appRouter } from '../../apps/server/src/router.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { idOf, openNursery, type TestNursery } from '../support/nursery.ts';
import { askerOf, envelopeOf, listed, sessionPaths } from './asking.ts';

let database: TestDatabase;
let nursery: TestNursery;
let ask: ReturnType<typeof askerOf>;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  ask = askerOf(nursery);
  await nursery.sql('UPDATE person SET password_hash = $1', [await passwordHash('what they chose')]);
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const everybody = [...ROLES, null] as const;
const nameOf = (role: Role | null) => role ?? 'nobody';

/** How each role fares at a procedure, when it sends what no procedure accepts: who may not is told so before anything else. */
async function welcomes(path: string, input: unknown): Promise<Record<string, string>> {
  const met = await Promise.all(
    everybody.map(async (role) => {
      const answer = await ask(path, input, role);
      const turnedAway = !answer.ok && ['not-allowed', 'not-signed-in', 'fault'].includes(answer.code);
      return [nameOf(role), turnedAway ? answer.code : 'let in'] as const;
    }),
  );
  return Object.fromEntries(met);
}

describe('the router', () => {
  it('has the listed operations, names they had before, what opens and ends sessions, the stream of changes and what waited on devices, and nothing else', () => {
    const before = Object.keys(onceOfGardens).map((name) => `gardens.${name}`);
    const paths = [
      ...listed.map(({ path }) => path),
      ...before,
      ...sessionPaths,
      'live.hearChanges',
      'outbox.sendEntries',
    ];
    expect(Object.keys(appRouter._def.procedures).sort()).toEqual(paths.sort());
  });

  it('knows every operation by its own name', () => {
    expect(
      listed.filter(({ path, operation }) => path.split('.')[1] !== operation.name).map(({ path }) => path),
    ).toEqual([]);
  });

  it('has no write that a viewer may do', () => {
    expect(
      listed
        .filter(({ operation }) => operation.kind === 'command' && operation.roles.includes('viewer'))
        .map(({ path }) => path),
    ).toEqual([]);
  });

  it('has no operation that an owner may not do', () => {
    expect(listed.filter(({ operation }) => !operation.roles.includes('owner')).map(({ path }) => path)).toEqual([]);
  });
});

describe('of the operations', () => {
  it.each(listed.map(({ path, operation }) => [path, operation] as const))(
    '%s lets in the roles it declares and nobody else',
    async (path, operation) => {
      const declared = Object.fromEntries(
        everybody.map((role) => [
          nameOf(role),
          role === null ? 'not-signed-in' : operation.roles.includes(role) ? 'let in' : 'not-allowed',
        ]),
      );
      expect(await welcomes(path, envelopeOf(operation, 'no such body', idOf(path)))).toEqual(declared);
    },
  );
});

describe('of what opens and ends sessions', () => {
  const withSession = [
    'people.me',
    'people.changeOwnPassword',
    'people.readCalendarAddress',
    'people.createCalendarAddress',
    'people.revokeCalendarAddress',
    'people.listSessions',
    'people.endSession',
    'people.endOtherSessions',
    'people.readSecondStep',
    'people.endSecondStep',
  ];
  const ownersOnly = ['people.beginSecondStep', 'people.finishSecondStep'];
  const reads = [
    'people.me',
    'people.setupState',
    'people.readCalendarAddress',
    'people.listSessions',
    'people.readSecondStep',
  ];
  it.each(sessionPaths)('%s lets in whoever it is for', async (path) => {
    const input = reads.includes(path) ? undefined : { commandId: idOf(path), body: valid[path] ?? {} };
    const all = Object.fromEntries(
      everybody.map((role) => [
        nameOf(role),
        role === null && [...withSession, ...ownersOnly].includes(path)
          ? 'not-signed-in'
          : role !== 'owner' && ownersOnly.includes(path)
            ? 'not-allowed'
            : 'let in',
      ]),
    );
    expect(await welcomes(path, input)).toEqual(all);
  });
});

/** What these take; each is let in and then refused for what it says. */
const valid: Record<string, object> = {
  'people.signIn': { email: 'nobody@example.test', password: 'not the password' },
  'people.createFirstOwner': {
    nurseryName: 'Another',
    zone: 'America/Chicago',
    name: 'Another',
    email: 'another@example.test',
    password: 'ten characters',
  },
  'people.endSession': { sessionId: '00000000-0000-4000-8000-000000000000' },
  'people.beginSecondStep': { password: 'not the password' },
  'people.finishSecondStep': { code: '000000' },
  'people.endSecondStep': { password: 'not the password', code: '000000' },
  'people.changeOwnPassword': { currentPassword: 'not the password', password: 'ten characters' },
};
