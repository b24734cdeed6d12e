// Sessions and known devices: the cookies they live in, how they are seen and ended, and what is purged.
import { randomUUID } from 'node:crypto';
import type { people as contracts } from '@rootclock/contracts';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { codeOf, openDoor, resultOf, type Browser } from '../../support/door.ts';
import { openNursery, sent, testClock, type TestNursery } from '../../support/nursery.ts';

const PHONE = 'Mozilla/5.0 (Android 15; Mobile; rv:140.0) Gecko/140.0 Firefox/140.0';
const DESK = 'Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Safari/537.36';
const password = 'slow river under moss';

let database: TestDatabase;
let nursery: TestNursery;
let door: Awaited<ReturnType<typeof openDoor>>;
let secure: Awaited<ReturnType<typeof openDoor>>;
const clock = testClock('2026-05-20');
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  [door, secure] = await Promise.all([
    openDoor(database, { clock: clock.now }),
    openDoor(database, { clock: clock.now, secureCookies: true }),
  ]);
});
afterAll(async () => {
  await Promise.all([door.close(), secure.close()]);
  await nursery.close();
  await database.drop();
});
beforeEach(() => clock.set('2026-05-20'));

async function addPerson() {
  const personId = randomUUID();
  const email = `${personId.slice(0, 8)}@example.test`;
  await nursery
    .as('owner')
    .people.addPerson(sent({ personId, name: 'Test Person', email, role: 'crew' as const, password }));
  return { personId, email };
}
const signIn = async (browser: Browser, email: string) =>
  expect((await browser.post('people.signIn', { email, password })).statusCode).toBe(200);
const isIn = async (browser: Browser) => (await browser.get('people.me')).statusCode === 200;
const sessionsOf = async (browser: Browser) =>
  resultOf<contracts.SessionRow[]>(await browser.get('people.listSessions'));

describe('cookies', () => {
  test.each([
    ['plain http', () => door, ['rootclock_device', 'rootclock_session'], false],
    ['https', () => secure, ['__Host-rootclock_device', '__Host-rootclock_session'], true],
  ] as const)('over %s are named so that no other host can set them', async (_, at, names, isSecure) => {
    const { email } = await addPerson();
    const browser = at().browser();
    const answer = await browser.post('people.signIn', { email, password });
    const cookies = answer.cookies as {
      name: string;
      path: string;
      httpOnly?: boolean;
      secure?: boolean;
      sameSite?: string;
      domain?: string;
    }[];
    expect(cookies.map(({ name }) => name).sort()).toEqual(names);
    for (const cookie of cookies)
      expect(cookie).toMatchObject({
        path: '/',
        httpOnly: true,
        sameSite: 'Lax',
        ...(isSecure ? { secure: true } : {}),
      });
    expect(cookies.map(({ domain }) => domain)).toEqual([undefined, undefined]);
    expect(await isIn(browser)).toBe(true);
    await browser.post('people.signOut', {});
    // Signing out ends the session; the device stays known.
    expect([...browser.jar.keys()]).toEqual([names[0]]);
  });

  test('of plain http are none over https', async () => {
    const { email } = await addPerson();
    const browser = door.browser();
    await signIn(browser, email);
    const there = secure.browser();
    for (const [name, value] of browser.jar) there.jar.set(name, value);
    expect(codeOf(await there.get('people.me'))).toBe('not-signed-in');
  });
});

describe('the sessions of a person', () => {
  test('are listed with the device in words, since when, and when last seen to the hour', async () => {
    const { email } = await addPerson();
    const [phone, desk] = [door.browser({ agent: PHONE }), door.browser({ agent: DESK })];
    await signIn(phone, email);
    clock.set('2026-05-21T09:10:00Z');
    await signIn(desk, email);
    clock.set('2026-05-21T09:40:00Z');
    expect(await sessionsOf(desk)).toMatchObject([{ here: true, seenAt: '2026-05-21T09:10:00.000Z' }, { here: false }]);
    clock.set('2026-05-21T11:05:00Z');
    await isIn(phone);
    expect(await sessionsOf(desk)).toMatchObject([
      {
        browser: 'Chrome',
        system: 'Linux',
        openedAt: '2026-05-21T09:10:00.000Z',
        seenAt: '2026-05-21T11:00:00.000Z',
        here: true,
      },
      {
        browser: 'Firefox',
        system: 'Android',
        openedAt: '2026-05-20T17:00:00.000Z',
        seenAt: '2026-05-21T11:00:00.000Z',
        here: false,
      },
    ]);
  });

  test('end one by one, only one’s own, and the device is no longer known', async () => {
    const { email } = await addPerson();
    const stranger = await addPerson();
    const [phone, desk, theirs] = [door.browser({ agent: PHONE }), door.browser(), door.browser()];
    await signIn(phone, email);
    await signIn(desk, email);
    await signIn(theirs, stranger.email);
    const phoneId = (await sessionsOf(desk)).find(({ here }) => !here)!.id;
    await theirs.post('people.endSession', { sessionId: phoneId });
    expect(await isIn(phone)).toBe(true);
    await desk.post('people.endSession', { sessionId: phoneId });
    expect([await isIn(phone), await isIn(desk)]).toEqual([false, true]);
    const known = await nursery.sql(
      `SELECT FROM token t JOIN person p ON p.id = t.person_id WHERE p.email = $1 AND t.kind = 'device' AND t.revoked_at IS NULL`,
      [email],
    );
    expect(known).toHaveLength(1);
  });

  test('all end but this one', async () => {
    const { email } = await addPerson();
    const browsers = [door.browser(), door.browser(), door.browser()] as const;
    for (const browser of browsers) await signIn(browser, email);
    await browsers[1].post('people.endOtherSessions', {});
    expect([await isIn(browsers[0]), await isIn(browsers[1]), await isIn(browsers[2])]).toEqual([false, true, false]);
    expect(await sessionsOf(browsers[1])).toMatchObject([{ here: true }]);
  });

  test('end on a device when it signs in again, and nowhere else', async () => {
    const { email } = await addPerson();
    const [here, elsewhere] = [door.browser(), door.browser()];
    await signIn(here, email);
    await signIn(elsewhere, email);
    const before = door.browser();
    for (const [name, value] of here.jar) before.jar.set(name, value);
    await signIn(here, email);
    expect([await isIn(before), await isIn(here), await isIn(elsewhere)]).toEqual([false, true, true]);
    expect(await sessionsOf(here)).toHaveLength(2);
  });

  test('of two people on one device are each their own', async () => {
    const [first, second] = [await addPerson(), await addPerson()];
    const shared = door.browser();
    await signIn(shared, first.email);
    await signIn(shared, second.email);
    const known = await nursery.sql(
      `SELECT person_id FROM token WHERE kind = 'device' AND revoked_at IS NULL AND person_id IN ($1, $2)`,
      [first.personId, second.personId],
    );
    expect(known).toHaveLength(2);
    expect(await sessionsOf(shared)).toHaveLength(1);
  });
});

describe('a device', () => {
  test('is no longer known once the owner sets a new password', async () => {
    const { email, personId } = await addPerson();
    await signIn(door.browser(), email);
    await nursery
      .as('owner')
      .people.changePerson(
        sent({ personId, name: 'Test Person', role: 'crew', ended: false, password: 'quiet barn behind hills' }),
      );
    expect(await nursery.sql(`SELECT FROM token WHERE person_id = $1 AND revoked_at IS NULL`, [personId])).toEqual([]);
  });

  test('is stored only as a hash that its cookie alone does not give', async () => {
    const { email, personId } = await addPerson();
    const browser = door.browser();
    await signIn(browser, email);
    const [stored] = await nursery.sql<{ hash: Buffer }>(
      `SELECT hash FROM token WHERE person_id = $1 AND kind = 'device'`,
      [personId],
    );
    expect(stored?.hash).toHaveLength(32);
    expect(browser.jar.get('rootclock_device')).toHaveLength(43);
  });
});

describe('what nobody can use any more', () => {
  test('is purged by the day’s roll: expired and revoked tokens, and the counts of guesses', async () => {
    const { email, personId } = await addPerson();
    await signIn(door.browser(), email);
    await door.browser({ address: '10.77.0.1' }).post('people.signIn', { email, password: 'guessing wildly' });
    await nursery.as('crew').people.createCalendarAddress(sent({}));
    await nursery.as('crew').people.revokeCalendarAddress(sent({}));
    const left = () =>
      nursery.sql<{ kind: string }>(`SELECT kind FROM token WHERE person_id IN ($1, $2) ORDER BY kind`, [
        personId,
        nursery.people.crew.personId,
      ]);
    expect(await left()).toHaveLength(3);
    nursery.clock.set('2026-07-20');
    await nursery.as('owner').people.editNursery(
      sent({
        name: 'Proving Ground',
        zone: 'America/Chicago',
        region: null,
        units: 'us',
        noticeDays: 30,
        seasonEndOn: '2026-11-15',
      }),
    );
    expect((await left()).map(({ kind }) => kind)).toEqual(['device']);
    expect(await nursery.sql('SELECT FROM sign_in_pace')).toEqual([]);
  });
});
