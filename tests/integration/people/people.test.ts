import { createHash, randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { referencePlants } from '../../../apps/server/src/reference/index.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, testClock, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let app: Awaited<ReturnType<typeof createApp>>;
const clock = testClock('2026-05-20');
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  app = await createApp({ databaseUrl: database.url, clock: clock.now });
  await app.ready();
});
afterAll(async () => {
  await app.close();
  await nursery.close();
  await database.drop();
});

const owner = () => nursery.as('owner').people;
const password = 'long enough to hold';
const post = (procedure: string, body: object, cookie = '') =>
  app.inject({
    method: 'POST',
    url: `/trpc/${procedure}`,
    payload: sent(body),
    headers: { 'content-type': 'application/json', cookie },
  });
const isSignedIn = async (cookie: string) =>
  (await app.inject({ method: 'GET', url: '/trpc/people.me', headers: { cookie } })).statusCode === 200;
const cookieOf = (response: { cookies: { name: string; value: string }[] }) =>
  response.cookies.map(({ name, value }) => `${name}=${value}`).join('; ');
const codeOf = (response: { json(): { error?: { data: { code: string; field?: string } } } }) =>
  response.json().error?.data.code;

async function addPerson(more: { role?: 'owner' | 'grower' | 'crew' | 'viewer'; email?: string } = {}) {
  const personId = randomUUID();
  const person = {
    personId,
    name: 'Test Helper',
    email: `${personId.slice(0, 8)}@example.test`,
    role: 'crew' as const,
    ...more,
  };
  await owner().addPerson(sent({ ...person, password }));
  return person;
}
const signIn = async (email: string, secret = password) =>
  cookieOf(await post('people.signIn', { email, password: secret }));

describe('a person who is added', () => {
  test('can sign in with the password they were told', async () => {
    const { email, personId } = await addPerson();
    expect(await isSignedIn(await signIn(email.toUpperCase()))).toBe(true);
    expect(await owner().listPeople({})).toContainEqual({
      id: personId,
      edition: 1,
      name: 'Test Helper',
      email,
      role: 'crew',
      endedAt: null,
    });
  });

  test.each([
    ['an address that is taken', { email: 'taken@example.test' }, 'email-taken'],
    ['the same address in capitals', { email: 'TAKEN@example.test' }, 'email-taken'],
    ['an address that is none', { email: 'nobody' }, 'invalid-input'],
  ])('with %s is refused', async (_, more, code) => {
    await addPerson({ email: 'taken@example.test' }).catch(() => undefined);
    expect(await refusalOf(addPerson(more))).toMatchObject({ code, field: 'email' });
  });

  test('with a short password is refused', async () => {
    expect(
      await refusalOf(
        owner().addPerson(
          sent({ personId: randomUUID(), name: 'A', email: 'a@example.test', role: 'crew', password: 'short' }),
        ),
      ),
    ).toMatchObject({ code: 'invalid-input', field: 'password' });
  });

  test('has a password that can be guessed fast neither from the person nor from the log of commands', async () => {
    const { personId, email, name, role } = await addPerson();
    const [stored] = await nursery.sql<{ password_hash: string }>('SELECT password_hash FROM person WHERE id = $1', [
      personId,
    ]);
    const logged = await nursery.sql<{ input_hash: string }>(`SELECT input_hash FROM command WHERE name = 'addPerson'`);
    expect(stored?.password_hash).toMatch(/^\$argon2id\$/);
    const fast = createHash('sha256').update(JSON.stringify({ email, name, password, personId, role })).digest('hex');
    expect(logged.map((row) => row.input_hash)).not.toContain(fast);
  });

  test('sent twice under one command is one person; with another password it is refused', async () => {
    const commandId = randomUUID();
    const body = {
      personId: randomUUID(),
      name: 'Twice',
      email: 'twice@example.test',
      role: 'crew' as const,
      password,
    };
    await owner().addPerson(sent(body, commandId));
    await owner().addPerson(sent(body, commandId));
    expect(
      await refusalOf(owner().addPerson(sent({ ...body, password: 'another long password' }, commandId))),
    ).toMatchObject({ code: 'command-id-reused' });
    expect((await owner().listPeople({})).filter(({ email }) => email === body.email)).toHaveLength(1);
  });
});

describe('a person who is changed', () => {
  test('and ended is signed out at once and for good, and may come back', async () => {
    const person = await addPerson();
    const cookie = await signIn(person.email);
    const change = (ended: boolean) =>
      owner().changePerson(sent({ personId: person.personId, name: person.name, role: person.role, ended }));
    await change(true);
    expect(await isSignedIn(cookie)).toBe(false);
    expect(codeOf(await post('people.signIn', { email: person.email, password }))).toBe('wrong-sign-in');
    await change(false);
    expect(await isSignedIn(await signIn(person.email))).toBe(true);
  });

  test('and ended keeps the day they were ended', async () => {
    const { personId, name, role } = await addPerson();
    await owner().changePerson(sent({ personId, name, role, ended: true }));
    const endedAt = async () => (await owner().listPeople({})).find(({ id }) => id === personId)?.endedAt;
    const before = await endedAt();
    nursery.clock.set('2026-05-21');
    await owner().changePerson(sent({ personId, name: 'Renamed', role, ended: true }));
    expect([before, await endedAt()]).toEqual(['2026-05-20T17:00:00.000Z', '2026-05-20T17:00:00.000Z']);
  });

  test('in their role alone stays signed in, with the new role', async () => {
    const { personId, name, email } = await addPerson();
    const cookie = await signIn(email);
    await owner().changePerson(sent({ personId, name, role: 'viewer', ended: false }));
    expect(
      (await app.inject({ method: 'GET', url: '/trpc/people.me', headers: { cookie } })).json().result.data.role,
    ).toBe('viewer');
  });

  test('to a new password has all sessions ended', async () => {
    const { personId, name, email, role } = await addPerson();
    const cookie = await signIn(email);
    await owner().changePerson(sent({ personId, name, role, ended: false, password: 'a wholly new password' }));
    expect(await isSignedIn(cookie)).toBe(false);
    expect(await isSignedIn(await signIn(email, 'a wholly new password'))).toBe(true);
  });

  test.each([
    ['another role', { role: 'grower' as const, ended: false }, 'role'],
    ['an end', { role: 'owner' as const, ended: true }, 'ended'],
  ])('is not given %s as the last owner', async (_, change, field) => {
    const { personId, personName: name } = nursery.people.owner;
    expect(await refusalOf(owner().changePerson(sent({ personId, name, ...change })))).toMatchObject({
      code: 'last-owner',
      field,
    });
  });

  test('may stop being an owner while another one is left, who is not an ended one', async () => {
    const second = await addPerson({ role: 'owner' });
    const demote = () =>
      owner().changePerson(sent({ personId: second.personId, name: second.name, role: 'crew', ended: false }));
    await owner().changePerson(sent({ personId: second.personId, name: second.name, role: 'owner', ended: true }));
    const { personId, personName: name } = nursery.people.owner;
    expect(await refusalOf(owner().changePerson(sent({ personId, name, role: 'crew', ended: false })))).toMatchObject({
      code: 'last-owner',
    });
    await demote();
    expect((await owner().listPeople({})).find(({ id }) => id === second.personId)).toMatchObject({
      role: 'crew',
      endedAt: null,
    });
  });

  test('must be of this nursery', async () => {
    const other = await openNursery(database);
    try {
      const change = (personId: string) =>
        refusalOf(owner().changePerson(sent({ personId, name: 'Somebody', role: 'crew', ended: true })));
      expect(await change(other.people.crew.personId)).toMatchObject({ code: 'not-found', field: 'personId' });
      expect(await change(randomUUID())).toEqual(await change(other.people.crew.personId));
      expect((await owner().listPeople({})).map(({ id }) => id)).not.toContain(other.people.crew.personId);
    } finally {
      await other.close();
    }
  });

  test.each(['grower', 'crew', 'viewer'] as const)('is not a %s’s to change, add or list', async (role) => {
    const people = nursery.as(role).people;
    const refusals = [
      await refusalOf(people.listPeople({})),
      await refusalOf(
        people.addPerson(sent({ personId: randomUUID(), name: 'A', email: 'b@example.test', role: 'crew', password })),
      ),
      await refusalOf(people.changePerson(sent({ personId: randomUUID(), name: 'A', role: 'crew', ended: true }))),
    ];
    expect(refusals.map(({ code }) => code)).toEqual(['not-allowed', 'not-allowed', 'not-allowed']);
  });
});

describe('one’s own password', () => {
  const change = (cookie: string, currentPassword: string, next: string) =>
    post('people.changeOwnPassword', { currentPassword, password: next }, cookie);

  test('changed keeps this session and ends the others', async () => {
    const { email } = await addPerson({ role: 'viewer' });
    const [here, elsewhere] = [await signIn(email), await signIn(email)];
    const answer = await change(here, password, 'the next long password');
    expect(answer.statusCode).toBe(200);
    expect([await isSignedIn(cookieOf(answer)), await isSignedIn(here), await isSignedIn(elsewhere)]).toEqual([
      true,
      false,
      false,
    ]);
    expect(await isSignedIn(await signIn(email, 'the next long password'))).toBe(true);
  });

  test('is only changed by whoever knows the present one, and guesses are limited', async () => {
    const { email } = await addPerson();
    const cookie = await signIn(email);
    for (let guess = 0; guess < 5; guess++)
      expect(codeOf(await change(cookie, 'guessing wildly', 'the next long password'))).toBe('wrong-password');
    expect(codeOf(await change(cookie, password, 'the next long password'))).toBe('too-many-sign-ins');
  });

  test('is not changed by a stranger, nor to a short one', async () => {
    expect(codeOf(await change('', password, 'the next long password'))).toBe('not-signed-in');
    const { email } = await addPerson();
    expect(codeOf(await change(await signIn(email), password, 'short'))).toBe('invalid-input');
  });
});

describe('the nursery’s settings', () => {
  const settings = {
    name: 'Proving Ground',
    zone: 'America/Denver',
    region: 'WI',
    units: 'metric' as const,
    noticeDays: 30,
    seasonEndOn: '2026-11-15',
  };

  test('are an owner’s to change', async () => {
    await owner().editNursery(sent(settings));
    expect((await owner().me()).nursery).toMatchObject(settings);
    expect(await refusalOf(nursery.as('grower').people.editNursery(sent(settings)))).toMatchObject({
      code: 'not-allowed',
    });
  });

  test.each([
    ['a time zone that is none', { zone: 'Prairie/Midnight' }, 'unknown-zone', 'zone'],
    ['no notice', { noticeDays: 0 }, 'invalid-input', 'noticeDays'],
    ['a season that ends on no day', { seasonEndOn: '2026-02-30' }, 'invalid-input', 'seasonEndOn'],
    ['units of its own', { units: 'cubits' as never }, 'invalid-input', 'units'],
    ['no name', { name: '  ' }, 'invalid-input', 'name'],
  ])('with %s are refused', async (_, more, code, field) => {
    expect(await refusalOf(owner().editNursery(sent({ ...settings, ...more })))).toMatchObject({ code, field });
  });
});

describe('the first owner', () => {
  test('finds the reference plants in the new nursery', async () => {
    const empty = await createDatabase();
    const fresh = await createApp({ databaseUrl: empty.url, clock: clock.now });
    try {
      const made = await fresh.inject({
        method: 'POST',
        url: '/trpc/people.createFirstOwner',
        headers: { 'content-type': 'application/json' },
        payload: sent({
          nurseryName: 'New Ground',
          zone: 'America/Chicago',
          name: 'First Owner',
          email: 'first@example.test',
          password,
        }),
      });
      const cookie = cookieOf(made);
      const list = await fresh.inject({
        method: 'GET',
        url: `/trpc/plants.listPlants?input=${encodeURIComponent('{}')}`,
        headers: { cookie },
      });
      expect(list.json().result.data.total).toBe(referencePlants.length);
    } finally {
      await fresh.close();
      await empty.drop();
    }
  });
});
