// The first stock page on a slow phone, with nothing kept from an earlier visit: what travels, and how long until the first rows can be read.
import { loadavg } from 'node:os';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../support/nursery.ts';
import { stockOf } from '../support/stock.ts';

/** A phone some years old at the edge of the yard: 1.6 Mbit/s down, 750 kbit/s up, 150 ms there and back, a quarter of this machine's speed. */
const LINE = { offline: false, latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8 };
const TIMES_SLOWER = 4;
const LOTS = 40;

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  const stock = stockOf(nursery);
  const plantId = await stock.addPlant();
  const containerId = await stock.addContainer({ code: 'tall-1l' });
  const placeId = await stock.addPlace({ code: 'B1' });
  const sourceId = await stock.addSource(plantId);
  for (let at = 0; at < LOTS; at += 1) await stock.addLot({ plantId, containerId, sourceId, placeId });
  journey = await openJourney(database, nursery, { keepsShell: true });
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

/** What one visit of a new browser costs. */
async function visit(): Promise<{ ms: number; kilobytes: number; files: number; page: Page }> {
  const page = await journey.open('grower', PHONE);
  const session = await page.context().newCDPSession(page);
  let bytes = 0;
  let files = 0;
  session.on('Network.loadingFinished', ({ encodedDataLength }) => {
    bytes += encodedDataLength;
    files += 1;
  });
  await session.send('Network.enable');
  await session.send('Network.emulateNetworkConditions', LINE);
  await session.send('Emulation.setCPUThrottlingRate', { rate: TIMES_SLOWER });
  const started = performance.now();
  await page.goto(`${journey.address}/stock/lots`, { waitUntil: 'commit' });
  await page
    .getByRole('link', { name: /^L-[0-9a-f]{6}$/ })
    .first()
    .waitFor();
  const ms = performance.now() - started;
  await page.waitForLoadState('networkidle');
  return { ms, kilobytes: bytes / 1000, files, page };
}

/** Four seconds is the aim: 4.4 were measured on a machine that did nothing else. Beside other tests a visit takes half as long again. */
const MOST_MS = 8000;

it('shows its first rows within seconds, and sends less than 400 kB in less than thirty answers', async () => {
  // What else the machine does makes a visit slower, never faster: the quickest of a few says what the phone waits for.
  const visits: Omit<Awaited<ReturnType<typeof visit>>, 'page'>[] = [];
  while (visits.length < 5 && !visits.some(({ ms }) => ms < MOST_MS)) {
    const { page, ...cost } = await visit();
    await page.context().close();
    visits.push(cost);
  }
  expect(visits[0]?.kilobytes).toBeLessThan(400);
  expect(visits[0]?.files).toBeLessThan(30);
  expect(Math.min(...visits.map(({ ms }) => ms)), JSON.stringify({ visits, load: loadavg() })).toBeLessThan(MOST_MS);
});
