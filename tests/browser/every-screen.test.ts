import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { violationsOn } from '../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { DESK, type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { isCampaign } from '../support/tries.ts';
import { openDemo, ROW_FOR } from './screens/demo.ts';
import { routes } from './screens/routes.ts';
import { overflowOf, type Watched, watch } from './screens/visit.ts';

/** Pages for whoever has no session; the first makes the first owner of an empty server. */
const OPEN = ['/begin', '/sign-in'];
/** An address that leads nowhere shows a page of its own. */
const NOWHERE = '/$';
/** Leads on to another page. */
const LEADS_ON = ['/stock'];

type Device = [name: string, size: { width: number; height: number }, language?: 'en' | 'es'];

const parameters = (route: string) => route.split('/').filter((part) => part.startsWith('$') && part !== '$');

it('every parameter of an address can be filled from the demo', () => {
  expect(routes.flatMap(parameters).filter((name) => ROW_FOR[name] === undefined)).toEqual([]);
});

it('the addresses were found where features register them', () => {
  expect(routes.length).toBeGreaterThan(35);
  expect(new Set(routes).size).toBe(routes.length);
});

async function expectSound({ page, troubles }: Watched): Promise<void> {
  expect({ overflow: await overflowOf(page), troubles: troubles() }).toEqual({ overflow: [], troubles: [] });
  expect(await violationsOn(page)).toEqual([]);
}

let database: TestDatabase;
let empty: TestDatabase;
let journey: Journey;
let firstVisit: Journey;
let closeDemo: () => Promise<void>;
const ids = new Map<string, string>();

beforeAll(async () => {
  database = await createDatabase();
  empty = await createDatabase();
  const { nursery, close } = await openDemo(database);
  closeDemo = close;
  for (const [name, query] of Object.entries(ROW_FOR)) {
    const [row] = await nursery.sql<{ id: string }>(query);
    ids.set(name, row?.id ?? '');
  }
  journey = await openJourney(database, nursery);
  firstVisit = await openJourney(empty, nursery);
}, 180_000);
afterAll(async () => {
  await journey.close();
  await firstVisit.close();
  await closeDemo();
  await database.drop();
  await empty.drop();
});

it('the demo has a row for every parameter', () => {
  expect([...ids].filter(([, id]) => id === '').map(([name]) => name)).toEqual([]);
});

const addressOf = (route: string) =>
  route === NOWHERE
    ? '/leads/nowhere'
    : route
        .split('/')
        .map((part) => ids.get(part) ?? part)
        .join('/');

const inSuite: Device[] = [
  ['a phone', PHONE],
  ['a desk', DESK],
];
/** A campaign asks for these as well, and comes from screen to screen in another order with each seed. */
const atLength: Device[] = [
  ['a phone in Spanish', PHONE, 'es'],
  ['a narrow phone', { width: 320, height: 740 }],
  ['a tablet in Spanish', { width: 768, height: 1024 }, 'es'],
];
const isAtLength = isCampaign('every-screen');
const closed = routes.filter((route) => !OPEN.includes(route));
const [inAnyOrder = closed] = fc.sample(fc.shuffledSubarray(closed, { minLength: closed.length }), 1);

describe.each(isAtLength ? [...inSuite, ...atLength] : inSuite)('on %s', (_, size, language = 'en') => {
  async function open(on: Journey, role: 'owner' | null): Promise<Watched> {
    const page = await on.open(role, size);
    await page.addInitScript((chosen) => localStorage.setItem('rootclock.language', chosen), language);
    return watch(page);
  }
  let watched: Watched;
  beforeAll(async () => {
    watched = await open(journey, 'owner');
  });
  afterAll(() => watched.page.context().close());

  it.each(isAtLength ? inAnyOrder : closed)('%s is sound', async (route) => {
    await watched.visit(journey.address + addressOf(route));
    if (!LEADS_ON.includes(route)) expect(new URL(watched.page.url()).pathname).toBe(addressOf(route));
    await expectSound(watched);
  });

  it.each(OPEN)('%s is sound for whoever is not signed in', async (route) => {
    const visited = route === '/begin' ? firstVisit : journey;
    const stranger = await open(visited, null);
    await stranger.visit(visited.address + route);
    expect(new URL(stranger.page.url()).pathname).toBe(route);
    await expectSound(stranger);
    await stranger.page.context().close();
  });
});
