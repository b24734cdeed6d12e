// Every page of gardens as it stands with plants, orders and clients on it: readable, reachable, and never wider than the screen.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { gardenStory, type GardenStory } from '../../support/gardens.ts';
import { DESK, type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../../support/nursery.ts';
import { overflowOf, type Watched, watch } from '../screens/visit.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let journey: Journey;
/** One order on its way and one for pickup, both with plants pulled; the first is short as well. */
let installation: string;
let pickup: string;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  journey = await openJourney(database, nursery);
  const lotId = await story.addLot({ units: 30, plantByOn: '2026-06-10' });
  const first = await story.order([{ units: 20 }, { units: 40, untreated: true }]);
  const second = await story.order([{ units: 4 }], { kind: 'pickup' });
  for (const { orderId, lineId } of [first, second]) await story.pull(orderId, [{ lineId, lotId, units: 2 }]);
  installation = first.orderId;
  pickup = second.orderId;
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

const pages: [string, () => string, string | RegExp][] = [
  ['the list of orders', () => '/gardens', 'Garden orders'],
  ['the form of a new order', () => '/gardens/new', 'New order'],
  ['what is to be pulled', () => '/gardens/to-pull', 'To pull'],
  ['an order', () => `/gardens/orders/${installation}`, /, Fen Hollow$/],
  ['its pull list', () => `/gardens/orders/${installation}/pull`, /^Pull list /],
  ['planting', () => `/gardens/orders/${installation}/plant`, /^Planting /],
  ['handing over', () => `/gardens/orders/${pickup}/hand-over`, /^Handing over /],
  ['bringing back', () => `/gardens/orders/${pickup}/bring-back`, /^Handing over /],
  ['the list of clients', () => '/gardens/clients', 'Clients'],
  ['the list of kits', () => '/gardens/kits', 'Kits'],
  ['a client', () => `/gardens/clients/${story.clientId}`, 'Fen Hollow'],
  ['a site', () => `/gardens/sites/${story.siteId}`, 'South slope'],
];

describe.each([
  ['a phone', PHONE],
  ['a desk', DESK],
] as const)('on %s', (_device, size) => {
  // Nothing is done on these pages, so one device looks at them one after the other.
  let watched: Watched;
  beforeAll(async () => {
    watched = watch(await journey.open('owner', size));
  });
  afterAll(() => watched.page.context().close());

  it.each(pages)('%s can be read by everyone', async (_name, address, title) => {
    await watched.visit(journey.address + address());
    const { page } = watched;
    await page.getByRole('heading', { level: 1, name: title }).waitFor();
    expect(await violationsOn(page)).toEqual([]);
    expect(await overflowOf(page)).toEqual([]);
  });
});

describe('an address that names nothing of this nursery', () => {
  it.each(['orders', 'clients', 'sites'])('is answered in words among %s', async (kind) => {
    const page = await journey.open('owner', PHONE);
    await page.goto(`${journey.address}/gardens/${kind}/00000000-0000-4000-8000-000000000000`);
    await page.getByRole('alert').getByText('This does not exist in your nursery.').waitFor();
    await page.context().close();
  });
});
