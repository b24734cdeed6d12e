// Which passwords are taken, and that one word typed on two keyboards is one password.
import { randomUUID } from 'node:crypto';
import { hash } from '@node-rs/argon2';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { DEMO_SIGN_INS } from '../../../apps/server/src/features/people/demo-sign-ins.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { codeOf, openDoor } from '../../support/door.ts';
import { openNursery, refusalOf, sent, testClock, type TestNursery } from '../../support/nursery.ts';

const password = 'slow river under moss';
let database: TestDatabase;
let nursery: TestNursery;
let door: Awaited<ReturnType<typeof openDoor>>;
const clock = testClock('2026-05-20');
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  door = await openDoor(database, { clock: clock.now });
});
afterAll(async () => {
  await door.close();
  await nursery.close();
  await database.drop();
});
beforeEach(() => clock.set(new Date(clock.now().getTime() + 2 * 86_400_000).toISOString()));

async function addPerson(secret = password, more: { name?: string; email?: string } = {}) {
  const personId = randomUUID();
  const person = {
    personId,
    name: 'Test Person',
    email: `${personId.slice(0, 8)}@example.test`,
    role: 'crew' as const,
    ...more,
  };
  await nursery.as('owner').people.addPerson(sent({ ...person, password: secret }));
  return person;
}
const enter = (email: string, secret: string) => door.browser().post('people.signIn', { email, password: secret });

describe('a new password', () => {
  test.each([
    ['1234567890'],
    ['password123'],
    ['qwertyuiop'],
    ['aaaaaaaaaaaa'],
    ['PASSWORD123'],
    ['Password1!'],
    ['abcabcabcabc'],
    ['contraseña123'],
    ['iloveyou2020'],
  ])('%s is refused as one of the first that anybody tries', async (secret) => {
    expect(await refusalOf(addPerson(secret))).toMatchObject({ code: 'common-password', field: 'password' });
  });

  test.each([
    ['Ottoline Brackwater', 'x@example.test', 'sunny brackwater 88'],
    ['Ann Lee', 'marshwren@example.test', 'big marsh-wren moss'],
    ['Ann Lee', 'y@example.test', 'my test nursery moss'],
  ])('of %s (%s) that holds a name anybody knows is refused: %s', async (name, email, secret) => {
    expect(await refusalOf(addPerson(secret, { name, email }))).toMatchObject({
      code: 'known-name-password',
      field: 'password',
    });
  });

  test('with the same letters as the name inside a longer word of another kind is taken', async () => {
    await addPerson('slow plannedlane moss', { name: 'Ann Lee' });
  });

  test.each([['people.changeOwnPassword'], ['people.changePerson']])('is judged by %s as well', async (procedure) => {
    const { email, personId, name, role } = await addPerson();
    const browser = door.browser();
    await browser.post('people.signIn', { email, password });
    const refused = {
      'people.changeOwnPassword': async () =>
        codeOf(await browser.post('people.changeOwnPassword', { currentPassword: password, password: 'password123' })),
      'people.changePerson': async () =>
        (
          await refusalOf(
            nursery
              .as('owner')
              .people.changePerson(sent({ personId, name, role, ended: false, password: 'password123' })),
          )
        ).code,
    }[procedure];
    expect(await refused?.()).toBe('common-password');
  });

  test('is judged of the first owner as well', async () => {
    const empty = await createDatabase();
    const fresh = await openDoor(empty, { clock: clock.now });
    try {
      const begin = async (secret: string) =>
        codeOf(
          await fresh.browser().post('people.createFirstOwner', {
            nurseryName: 'New Ground',
            zone: 'America/Chicago',
            name: 'Ottoline Brackwater',
            email: 'x@example.test',
            password: secret,
          }),
        );
      expect([await begin('password123'), await begin('on new-ground we live'), await begin(password)]).toEqual([
        'common-password',
        'known-name-password',
        undefined,
      ]);
    } finally {
      await fresh.close();
      await empty.drop();
    }
  });
});

describe('a password of the demo', () => {
  test.each(DEMO_SIGN_INS.map((person) => [person.password]))('%s still opens the door', async (secret) => {
    const { email, personId } = await addPerson();
    await nursery.sql('UPDATE person SET password_hash = $2 WHERE id = $1', [personId, await hash(secret)]);
    expect((await enter(email, secret)).statusCode).toBe(200);
  });
});

describe('one word on two keyboards', () => {
  test('is one password', async () => {
    const { email } = await addPerson('caf\u00e9 under the moss');
    expect((await enter(email, 'cafe\u0301 under the moss')).statusCode).toBe(200);
  });

  test('is taken as it was typed when it was stored before', async () => {
    const { email, personId } = await addPerson();
    await nursery.sql('UPDATE person SET password_hash = $2 WHERE id = $1', [
      personId,
      await hash('cafe\u0301 under the moss'),
    ]);
    expect((await enter(email, 'cafe\u0301 under the moss')).statusCode).toBe(200);
    expect(codeOf(await enter(email, 'caf\u00e9 under the moss'))).toBe('wrong-sign-in');
  });

  test('is one address', async () => {
    const { email } = await addPerson(password, { email: 'jos\u00e9-one@example.test' });
    expect((await enter('jose\u0301-one@example.test', password)).statusCode).toBe(200);
    expect(await refusalOf(addPerson(password, { email: 'JOSE\u0301-one@example.test' }))).toMatchObject({
      code: 'email-taken',
    });
    expect(email).toBe('jos\u00e9-one@example.test');
  });
});

describe('one’s own password', () => {
  test('is changed by nobody without the present one, not even by an owner who changes people', async () => {
    const { personId, personName: name } = nursery.people.owner;
    const change = nursery
      .as('owner')
      .people.changePerson(sent({ personId, name, role: 'owner', ended: false, password: 'quiet barn behind hills' }));
    expect(await refusalOf(change)).toMatchObject({ code: 'own-password', field: 'password' });
  });
});
