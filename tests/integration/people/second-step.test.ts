// A second step at sign-in: set up, asked for, used up, turned off, and taken off by an owner.
import { randomUUID } from 'node:crypto';
import { generateSync } from 'otplib';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { codeOf, openDoor, resultOf, type Browser } from '../../support/door.ts';
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
const later = (seconds: number) => clock.set(new Date(clock.now().getTime() + seconds * 1000).toISOString());
const codeNow = (secret: string) => generateSync({ secret, epoch: Math.floor(clock.now().getTime() / 1000) });

async function addOwner(role: 'owner' | 'crew' = 'owner') {
  const personId = randomUUID();
  const email = `${personId.slice(0, 8)}@example.test`;
  await nursery.as('owner').people.addPerson(sent({ personId, name: 'Test Owner', email, role, password }));
  const browser = door.browser();
  await browser.post('people.signIn', { email, password });
  return { personId, email, browser };
}

async function turnOn(browser: Browser) {
  const { secret, address } = resultOf<{ secret: string; address: string }>(
    await browser.post('people.beginSecondStep', { password }),
  );
  const { recoveryCodes } = resultOf<{ recoveryCodes: string[] }>(
    await browser.post('people.finishSecondStep', { code: codeNow(secret) }),
  );
  later(60);
  return { secret, address, recoveryCodes };
}
const enter = (email: string, code?: string) =>
  door.browser().post('people.signIn', { email, password, ...(code === undefined ? {} : { code }) });

describe('a second step', () => {
  test('is set up with the password and a first code, and tells apps whose it is', async () => {
    const { browser, email } = await addOwner();
    expect(codeOf(await browser.post('people.beginSecondStep', { password: 'not the password' }))).toBe(
      'wrong-password',
    );
    const { secret, address } = resultOf<{ secret: string; address: string }>(
      await browser.post('people.beginSecondStep', { password }),
    );
    expect(address).toBe(`otpauth://totp/Rootclock:${encodeURIComponent(email)}?secret=${secret}&issuer=Rootclock`);
    expect(
      codeOf(
        await browser.post('people.finishSecondStep', { code: codeNow(secret) === '000000' ? '000001' : '000000' }),
      ),
    ).toBe('wrong-code');
    // Until then nobody is asked for a code.
    expect((await enter(email)).statusCode).toBe(200);
    await browser.post('people.finishSecondStep', { code: codeNow(secret) });
    expect(resultOf(await browser.get('people.readSecondStep'))).toEqual({
      since: clock.now().toISOString(),
      codesLeft: 10,
    });
    expect(codeOf(await enter(email))).toBe('second-step-needed');
    expect(codeOf(await browser.post('people.beginSecondStep', { password }))).toBe('second-step-changed');
  });

  test('lets each code in once, even when it is sent ten times at once', async () => {
    const { browser, email } = await addOwner();
    const { secret } = await turnOn(browser);
    const code = codeNow(secret);
    const answers = await Promise.all(Array.from({ length: 4 }, () => enter(email, code)));
    expect(answers.map((answer) => codeOf(answer) ?? 'in').sort()).toEqual([
      'in',
      'wrong-code',
      'wrong-code',
      'wrong-code',
    ]);
    later(60);
    expect((await enter(email, ` ${codeNow(secret).slice(0, 3)} ${codeNow(secret).slice(3)}`)).statusCode).toBe(200);
  });

  test('does not take the code that turned it on once more', async () => {
    const { browser, email } = await addOwner();
    const { secret } = resultOf<{ secret: string }>(await browser.post('people.beginSecondStep', { password }));
    const code = codeNow(secret);
    await browser.post('people.finishSecondStep', { code });
    expect(codeOf(await enter(email, code))).toBe('wrong-code');
  });

  test('takes each of ten recovery codes once', async () => {
    const { browser, email } = await addOwner();
    const { recoveryCodes } = await turnOn(browser);
    expect(recoveryCodes).toHaveLength(10);
    const [first = '', second = ''] = recoveryCodes;
    expect((await enter(email, first.toLowerCase().replaceAll('-', ' '))).statusCode).toBe(200);
    expect(codeOf(await enter(email, first))).toBe('wrong-code');
    expect((await enter(email, second)).statusCode).toBe(200);
    expect(resultOf(await browser.get('people.readSecondStep'))).toMatchObject({ codesLeft: 8 });
  });

  test('is guessed at within the same limits as the password, but a missing code is no guess', async () => {
    const { browser, email } = await addOwner();
    await turnOn(browser);
    for (let asked = 0; asked < 8; asked++) expect(codeOf(await enter(email))).toBe('second-step-needed');
    const codes: (string | undefined)[] = [];
    for (let guess = 0; guess < 7; guess++) codes.push(codeOf(await enter(email, `ZZZZ-ZZZZ-ZZZZ-ZZZ${guess}`)));
    expect(codes).toEqual([...Array.from({ length: 5 }, () => 'wrong-code'), 'too-many-sign-ins', 'too-many-sign-ins']);
  });

  test('says nothing to who does not know the password', async () => {
    const { browser, email } = await addOwner();
    await turnOn(browser);
    expect(codeOf(await door.browser().post('people.signIn', { email, password: 'not the password' }))).toBe(
      'wrong-sign-in',
    );
  });

  test('is turned off with the password and a code', async () => {
    const { browser, email } = await addOwner();
    const { secret, recoveryCodes } = await turnOn(browser);
    expect(
      codeOf(await browser.post('people.endSecondStep', { password: 'not the password', code: codeNow(secret) })),
    ).toBe('wrong-password');
    expect(codeOf(await browser.post('people.endSecondStep', { password, code: 'ZZZZ-ZZZZ' }))).toBe('wrong-code');
    expect((await browser.post('people.endSecondStep', { password, code: recoveryCodes[0]! })).statusCode).toBe(200);
    expect((await enter(email)).statusCode).toBe(200);
    expect(
      await nursery.sql('SELECT FROM recovery_code c JOIN person p ON p.id = c.person_id WHERE p.email = $1', [email]),
    ).toEqual([]);
  });

  test('is taken off by another owner, who sees who has one', async () => {
    const { personId, browser, email } = await addOwner();
    await turnOn(browser);
    expect(await nursery.as('owner').people.listSecondSteps({})).toContain(personId);
    await nursery.as('owner').people.removeSecondStep(sent({ personId }));
    expect(await nursery.as('owner').people.listSecondSteps({})).not.toContain(personId);
    expect((await enter(email)).statusCode).toBe(200);
    expect(
      await refusalOf(nursery.as('owner').people.removeSecondStep(sent({ personId: randomUUID() }))),
    ).toMatchObject({ code: 'not-found' });
  });

  test('is not taken off oneself that way, without password and code', async () => {
    const { personId, browser } = await addOwner();
    await turnOn(browser);
    expect(codeOf(await browser.post('people.removeSecondStep', { personId }))).toBe('own-second-step');
    expect(resultOf(await browser.get('people.readSecondStep'))).toMatchObject({ codesLeft: 10 });
  });

  test('is for owners', async () => {
    const { browser } = await addOwner('crew');
    expect(codeOf(await browser.post('people.beginSecondStep', { password }))).toBe('not-allowed');
  });

  test('leaves its secret and codes in no log of commands, and codes only as hashes', async () => {
    const { browser } = await addOwner();
    const { secret, recoveryCodes } = await turnOn(browser);
    const kept = JSON.stringify([
      await nursery.sql('SELECT * FROM command'),
      await nursery.sql(`SELECT encode(hash, 'escape') FROM recovery_code`),
    ]);
    for (const each of [secret, ...recoveryCodes]) expect(kept).not.toContain(each);
  });
});
