// Two people share a browser, and with it the one cookie. Each entry says whose it is, each answer whose session it was made for.
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { sessionOf } from '../../support/session.ts';

let database: TestDatabase;
let nursery: TestNursery;
let app: Awaited<ReturnType<typeof createApp>>;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  app = await createApp({ databaseUrl: database.url, clock: nursery.clock.now });
  await app.ready();
});
afterAll(async () => {
  await app.close();
  await nursery.close();
  await database.drop();
});

const place = (code: string) => ({ placeId: randomUUID(), code, kind: 'bench' as const });
const placesCalled = async (code: string) => (await nursery.sql('SELECT 1 FROM place WHERE code = $1', [code])).length;
const personOf = (role: 'owner' | 'grower' | 'crew') => nursery.people[role].personId;

describe('an entry that names its person', () => {
  test('is refused under another’s session, and writes nothing', async () => {
    const entry = { ...sent(place('A1')), personId: personOf('grower') };
    expect(await refusalOf(nursery.as('owner').stock.addPlace(entry))).toMatchObject({ code: 'another-person' });
    expect(await placesCalled('A1')).toBe(0);
    expect(await nursery.sql('SELECT 1 FROM command WHERE id = $1', [entry.commandId])).toEqual([]);
  });

  test('takes effect once under its own, also when it was sent under another’s in between', async () => {
    const entry = { ...sent(place('A2')), personId: personOf('grower') };
    await refusalOf(nursery.as('owner').stock.addPlace(entry));
    const first = await nursery.as('grower').stock.addPlace(entry);
    expect(await refusalOf(nursery.as('owner').stock.addPlace(entry))).toMatchObject({ code: 'another-person' });
    expect(await nursery.as('grower').stock.addPlace(entry)).toEqual(first);
    expect(await placesCalled('A2')).toBe(1);
  });

  test('is told apart before role and content, so that it is not parked for what another may not do', async () => {
    const entry = { ...sent(place('A3')), personId: personOf('owner') };
    expect(await refusalOf(nursery.as('viewer').stock.addPlace(entry))).toMatchObject({ code: 'another-person' });
    expect(
      await refusalOf(
        nursery.as('grower').stock.addPlace({ ...sent({ code: 3 } as never), personId: personOf('owner') }),
      ),
    ).toMatchObject({ code: 'another-person' });
  });

  test('finds the answer that was stored before envelopes named anybody', async () => {
    const { commandId, body } = sent(place('A4'));
    const first = await nursery.as('grower').stock.addPlace({ commandId, body });
    expect(await nursery.as('grower').stock.addPlace({ commandId, personId: personOf('grower'), body })).toEqual(first);
  });

  test('may leave the person out, as pages of before do: then it is its session’s', async () => {
    await nursery.as('grower').stock.addPlace(sent(place('A5')));
    expect(await placesCalled('A5')).toBe(1);
  });
});

describe('over HTTP', () => {
  const post = async (role: 'owner' | 'grower', procedure: string, payload: object, cookie?: string) =>
    app.inject({
      method: 'POST',
      url: `/trpc/${procedure}`,
      payload,
      headers: {
        'content-type': 'application/json',
        cookie: cookie ?? `rootclock_session=${await sessionOf(nursery, role)}`,
      },
    });

  test('it answers 409 with a code of its own', async () => {
    const answer = await post('owner', 'stock.addPlace', { ...sent(place('B1')), personId: personOf('grower') });
    expect([answer.statusCode, answer.json().error.data]).toMatchObject([
      409,
      { code: 'another-person', class: 'access' },
    ]);
  });

  test('signing out ends no session but one’s own', async () => {
    const cookie = `rootclock_session=${await sessionOf(nursery, 'owner')}`;
    const me = () => app.inject({ url: '/trpc/people.me', headers: { cookie } });
    expect(
      (await post('owner', 'people.signOut', { ...sent({}), personId: personOf('grower') }, cookie)).json().error.data
        .code,
    ).toBe('another-person');
    expect((await me()).json().result.data.person.id).toBe(personOf('owner'));
    expect(
      (await post('owner', 'people.signOut', { ...sent({}), personId: personOf('owner') }, cookie)).statusCode,
    ).toBe(200);
    expect((await me()).statusCode).toBe(401);
    expect(
      (await post('owner', 'people.signOut', { ...sent({}), personId: personOf('owner') }, cookie)).statusCode,
    ).toBe(200);
  });

  test('a calendar address is not made, and not ended, in another’s name', async () => {
    for (const procedure of ['people.createCalendarAddress', 'people.revokeCalendarAddress']) {
      const answer = await post('owner', procedure, { ...sent({}), personId: personOf('grower') });
      expect(answer.json().error.data.code).toBe('another-person');
    }
  });

  test('every answer carries the server’s instant, and those of procedures the session’s person', async () => {
    const cookie = `rootclock_session=${await sessionOf(nursery, 'owner')}`;
    const now = String(nursery.clock.now().getTime());
    const urls = [
      '/trpc/people.me',
      '/trpc/people.setupState',
      '/trpc/no.such',
      '/health',
      '/no-such-page',
      '/paper/protocols/x.pdf',
    ];
    const answers = await Promise.all(urls.map(async (url) => app.inject({ url, headers: { cookie } })));
    expect(answers.map(({ headers }) => headers['rootclock-now'])).toEqual(urls.map(() => now));
    expect(answers.slice(0, 3).map(({ headers }) => headers['rootclock-person'])).toEqual([
      personOf('owner'),
      personOf('owner'),
      personOf('owner'),
    ]);
    const nobody = await app.inject({ url: '/trpc/people.me' });
    expect([nobody.statusCode, nobody.headers['rootclock-person'], nobody.headers['rootclock-now']]).toEqual([
      401,
      '',
      now,
    ]);
    const forged = await app.inject({
      method: 'POST',
      url: '/trpc/people.signOut',
      headers: { origin: 'https://elsewhere.test', 'content-type': 'application/json' },
      payload: '{}',
    });
    expect([forged.statusCode, forged.headers['rootclock-now']]).toEqual([403, now]);
  });
});
