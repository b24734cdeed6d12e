import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { DESK, type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { openNursery, sent, type TestNursery } from '../support/nursery.ts';
import { stockOf } from '../support/stock.ts';

/** How long the other one may have to wait. */
const WITHIN_MS = 5000;

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;
let lotId: string;
let code: string;
let places: { from: string; to: string };

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  journey = await openJourney(database, nursery);
  const stock = stockOf(nursery);
  const plantId = await stock.addPlant();
  const containerId = await stock.addContainer();
  const sourceId = await stock.addSource(plantId);
  places = { from: await stock.addPlace({ code: 'B1' }), to: await stock.addPlace({ code: 'Y7', kind: 'yard' }) };
  lotId = await stock.addLot({ plantId, containerId, sourceId, placeId: places.from, units: 400 });
  code = (await nursery.as('viewer').stock.readLot({ lotId })).code;
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

async function openAt(page: Page, address: string): Promise<void> {
  await page.goto(journey.address + address);
  await page.getByText(code).first().waitFor();
  // A page that was loaded anew would have lost this.
  await page.evaluate(() => void (document.documentElement.dataset.loaded = 'once'));
}

const wasReloaded = async (page: Page) =>
  (await page.evaluate(() => document.documentElement.dataset.loaded)) !== 'once';
const standing = async () => (await nursery.as('viewer').stock.readLot({ lotId })).units.onHand;

describe('of two people at work', () => {
  let crew: Page;
  let owner: Page;
  beforeEach(async () => {
    crew = await journey.open('crew', PHONE);
    owner = await journey.open('owner', DESK);
  });

  it('the one at the desk sees in the list what the other one wrote off in the field', async () => {
    await openAt(owner, '/stock/lots');
    await openAt(crew, `/stock/lots/${lotId}`);
    const left = (await standing()) - 3;
    await crew.getByRole('button', { name: 'Lost', exact: true }).click();
    await crew.getByRole('textbox', { name: 'How many' }).fill('3');
    await crew.getByLabel('Why').selectOption({ label: 'drought' });
    await crew.getByRole('button', { name: 'Write off', exact: true }).click();
    await owner
      .getByRole('row')
      .filter({ hasText: code })
      .getByText(String(left))
      .first()
      .waitFor({ timeout: WITHIN_MS });
    expect(await wasReloaded(owner)).toBe(false);
    expect(await standing()).toBe(left);
  });

  it('the one in the field sees on the lot’s page where the other one moved it', async () => {
    await openAt(crew, `/stock/lots/${lotId}`);
    await openAt(owner, `/stock/lots/${lotId}`);
    expect(await crew.getByText('Y7').count()).toBe(0);
    await nursery.as('owner').stock.moveLot(sent({ lotId, units: 10, toPlaceId: places.to, happenedOn: '2026-05-20' }));
    for (const page of [crew, owner]) {
      await page.getByText('Y7').first().waitFor({ timeout: WITHIN_MS });
      expect(await wasReloaded(page)).toBe(false);
    }
  });

  it('both see on the list of orders what either of them takes', async () => {
    const clientId = '00000000-0000-4000-8000-00000000c11e';
    await nursery.as('owner').clients.addClient(sent({ clientId, name: 'Fen Hollow' }));
    for (const page of [crew, owner]) {
      await page.goto(`${journey.address}/gardens`);
      await page.getByRole('heading', { level: 1 }).waitFor();
    }
    await nursery.as('grower').orders.addOrder(
      sent({
        orderId: '00000000-0000-4000-8000-0000000000d1',
        clientId,
        kind: 'pickup' as const,
        dueOn: '2026-06-01',
      }),
    );
    for (const page of [crew, owner]) await page.getByText('Fen Hollow').first().waitFor({ timeout: WITHIN_MS });
  });

  it('the one at the desk hears again after something else answered in the server’s stead', async () => {
    const instead = [
      { status: 429, contentType: 'application/json', body: '{}' },
      { status: 503, contentType: 'text/html', body: 'Please wait' },
      { status: 200, contentType: 'text/html', body: 'Please wait' },
    ];
    const stream = '**/trpc/live.hearChanges*';
    let met = 0;
    await owner.route(stream, (route) => {
      const other = instead[met++];
      return other ? route.fulfill(other) : route.continue();
    });
    const heard = owner.waitForResponse(
      (response) =>
        response.url().includes('live.hearChanges') && response.headers()['content-type'] === 'text/event-stream',
    );
    await openAt(owner, '/stock/lots');
    await heard;
    expect(met).toBe(instead.length + 1);
    await nursery
      .as('owner')
      .stock.loseFromLot(
        sent({ lotId, units: 2, placeId: places.from, cause: 'weather' as const, happenedOn: '2026-05-20' }),
      );
    await owner
      .getByRole('row')
      .filter({ hasText: code })
      .getByText(String(await standing()))
      .first()
      .waitFor({ timeout: WITHIN_MS });
    expect(await wasReloaded(owner)).toBe(false);
  });

  it('nothing of another nursery reaches them', async () => {
    const other = await openNursery(database);
    await openAt(owner, '/stock/lots');
    const asked: string[] = [];
    owner.on('request', (request) => void (request.url().includes('/trpc/') && asked.push(request.url())));
    await other
      .as('owner')
      .stock.addPlace(sent({ placeId: '00000000-0000-4000-8000-00000000ace0', code: 'Z1', kind: 'bench' as const }));
    // Their own entry comes after it on the same stream: when it has arrived the other would have.
    await nursery
      .as('owner')
      .stock.loseFromLot(
        sent({ lotId, units: 7, placeId: places.from, cause: 'weather' as const, happenedOn: '2026-05-20' }),
      );
    const left = String(await standing());
    await owner.getByRole('row').filter({ hasText: code }).getByText(left).first().waitFor({ timeout: WITHIN_MS });
    expect(asked.filter((url) => url.includes('listLots')).length).toBe(1);
    await other.close();
  });
});
