// What guessing at passwords meets: limits that hold for many guesses at once, and never for a device that is known.
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { codeOf, dataOf, openDoor } from '../../support/door.ts';
import { testClock } from '../../support/nursery.ts';

let database: TestDatabase;
let door: Awaited<ReturnType<typeof openDoor>>;
let other: Awaited<ReturnType<typeof openDoor>>;
const clock = testClock('2026-05-20');
const owner = {
  nurseryName: 'Proving Ground',
  zone: 'America/Chicago',
  name: 'Test Owner',
  email: 'kim@example.test',
  password: 'slow river under moss',
};

beforeAll(async () => {
  database = await createDatabase();
  [door, other] = await Promise.all([
    openDoor(database, { clock: clock.now }),
    openDoor(database, { clock: clock.now }),
  ]);
  await door.browser({ address: '10.9.9.9' }).post('people.createFirstOwner', owner);
});
afterAll(async () => {
  await Promise.all([door.close(), other.close()]);
  await database.drop();
});

// Each test is two days after the one before, so that no guess of one counts in another.
beforeEach(() => clock.set(new Date(clock.now().getTime() + 2 * 86_400_000).toISOString()));
const later = (seconds: number) => clock.set(new Date(clock.now().getTime() + seconds * 1000).toISOString());
const tally = (codes: (string | undefined)[]) =>
  Object.fromEntries(
    [...new Set(codes)].sort().map((code) => [String(code), codes.filter((each) => each === code).length]),
  );
const wrong = (email = owner.email) => ({ email, password: 'guessing wildly' });
const right = { email: owner.email, password: owner.password };
/** Somebody at an address that nobody was seen at yet. */
let strangers = 0;
const stranger = () => door.browser({ address: `10.${Math.floor(strangers / 250)}.1.${strangers++ % 250}` });

describe('guesses at one account', () => {
  test('sent forty at once, to two processes, are tried five times', async () => {
    const answers = await Promise.all(
      Array.from({ length: 40 }, (_, at) =>
        (at % 2 ? door : other).browser({ address: `10.200.0.${at}` }).post('people.signIn', wrong()),
      ),
    );
    expect(tally(answers.map(codeOf))).toEqual({ 'too-many-sign-ins': 35, 'wrong-sign-in': 5 });
  });

  test('are one account’s however its letters are written', async () => {
    const spellings = [owner.email, 'KIM@example.test', 'K\u0130M@EXAMPLE.TEST', '\u212Aim@example.test'];
    const codes: (string | undefined)[] = [];
    for (let guess = 0; guess < 12; guess++)
      codes.push(codeOf(await stranger().post('people.signIn', wrong(spellings[guess % spellings.length]))));
    expect(tally(codes)).toEqual({ 'too-many-sign-ins': 7, 'wrong-sign-in': 5 });
  });

  test('wait twice as long after each failure, a quarter of an hour at most, and are told so in seconds', async () => {
    const waits: number[] = [];
    for (let failure = 1; failure <= 17; failure++) {
      expect(codeOf(await stranger().post('people.signIn', wrong()))).toBe('wrong-sign-in');
      if (failure < 5) continue;
      const refused = await stranger().post('people.signIn', right);
      const { waitSeconds } = dataOf<{ waitSeconds: number }>(refused);
      waits.push(waitSeconds);
      later(waitSeconds);
    }
    expect(waits).toEqual([1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900, 900]);
  });

  test('are forgotten when the right password comes in between', async () => {
    for (let failure = 0; failure < 4; failure++) await stranger().post('people.signIn', wrong());
    expect((await stranger().post('people.signIn', right)).statusCode).toBe(200);
    for (let failure = 0; failure < 4; failure++)
      expect(codeOf(await stranger().post('people.signIn', wrong()))).toBe('wrong-sign-in');
  });
});

describe('guesses from one address', () => {
  test('at many accounts are slowed down after forty, and all of one network’s are counted together', async () => {
    const guess = (at: number) =>
      door
        .browser({ address: `2001:db8:7:7::${at.toString(16)}` })
        .post('people.signIn', wrong(`nobody-${at}@example.test`));
    const codes: (string | undefined)[] = [];
    for (let at = 1; at <= 45; at++) codes.push(codeOf(await guess(at)));
    expect(tally(codes)).toEqual({ 'too-many-sign-ins': 5, 'wrong-sign-in': 40 });
    expect(
      codeOf(await door.browser({ address: '2001:db8:7:8::1' }).post('people.signIn', wrong('nobody@example.test'))),
    ).toBe('wrong-sign-in');
  });
});

describe('a device that is known', () => {
  test('gets in with the right password while strangers guess, from its own address too', async () => {
    const home = door.browser({ address: '10.3.0.1' });
    expect((await home.post('people.signIn', right)).statusCode).toBe(200);
    await home.post('people.signOut', {});
    for (let guess = 0; guess < 60; guess++)
      await door
        .browser({ address: '10.3.0.1' })
        .post('people.signIn', wrong(guess % 2 ? owner.email : `nobody-${guess}@example.test`));
    expect(codeOf(await stranger().post('people.signIn', right))).toBe('too-many-sign-ins');
    expect((await home.post('people.signIn', right)).statusCode).toBe(200);
  });

  test('that is in other hands has a limit of its own', async () => {
    const home = door.browser({ address: '10.4.0.1' });
    await home.post('people.signIn', right);
    const codes: (string | undefined)[] = [];
    for (let guess = 0; guess < 8; guess++) codes.push(codeOf(await home.post('people.signIn', wrong())));
    expect(tally(codes)).toEqual({ 'too-many-sign-ins': 3, 'wrong-sign-in': 5 });
    expect((await stranger().post('people.signIn', right)).statusCode).toBe(200);
  });
});

describe('what was refused', () => {
  test('is noted in the log, without what could be guessed with', async () => {
    const logged = vi.spyOn(door.app.log, 'warn');
    const guessed = door.browser({ address: '10.5.0.1' });
    for (let guess = 0; guess < 6; guess++) await guessed.post('people.signIn', wrong());
    await guessed.post('people.signIn', wrong('nobody@example.test'));
    const [person] =
      (await door.browser({ address: '10.5.0.2' }).post('people.signIn', right)).statusCode === 429 ? [owner] : [];
    expect(person).toBe(owner);
    const events = logged.mock.calls.map(([event]) => event as unknown as Record<string, unknown>);
    expect(events.map(({ event, reason, address, device }) => [event, reason, address, device])).toEqual([
      ...Array.from({ length: 5 }, () => ['sign-in refused', 'wrong-sign-in', '10.5.0.1', 'unknown']),
      ['sign-in refused', 'waits', '10.5.0.1', 'unknown'],
      ['sign-in refused', 'wrong-sign-in', '10.5.0.1', 'unknown'],
      ['sign-in refused', 'waits', '10.5.0.2', 'unknown'],
    ]);
    expect(events.map(({ personId }) => typeof personId)).toEqual([
      ...Array.from({ length: 6 }, () => 'string'),
      'object',
      'string',
    ]);
    expect(JSON.stringify(events)).not.toMatch(/example\.test|guessing|moss/);
    logged.mockRestore();
  });
});

describe('a batch', () => {
  test.each([
    ['people.signIn', wrong()],
    ['people.createFirstOwner', owner],
    ['people.changeOwnPassword', { currentPassword: 'guessing wildly', password: 'a wholly new password' }],
  ])('cannot carry %s', async (procedure, body) => {
    const home = door.browser();
    await home.post('people.signIn', right);
    const answers = (await home.batch(procedure, [body, body])).json() as { error?: { data: { code: string } } }[];
    expect(answers.map(({ error }) => error?.data.code)).toEqual(['not-in-a-batch', 'not-in-a-batch']);
  });
});
