import { randomUUID } from 'node:crypto';
import type { Page, Route } from 'playwright-core';
import { beforeEach, expect, it } from 'vitest';
import { violationsOn } from '../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { gardenStory, type GardenStory } from '../support/gardens.ts';
import { DESK, type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let journey: Journey;

// A nursery for each device: an order of the first one would take the second one's plants.
beforeEach(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  await nursery.sql(
    `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'scientific', 'Asclepias tuberosa', 'asclepias tuberosa')`,
    [nursery.nurseryId, randomUUID(), story.plantId],
  );
  journey = await openJourney(database, nursery);
  return async () => {
    await journey.close();
    await nursery.close();
    await database.drop();
  };
});

const JOURNEY_MS = 120_000;
const codeOf = async (lotId: string): Promise<string> =>
  (await nursery.sql<{ code: string }>('SELECT code FROM lot WHERE id = $1', [lotId]))[0]?.code ?? '';

/** The card of a lot on the board; the one that must leave first stands first. */
const cardOf = (page: Page, code: string) =>
  page.getByRole('listitem').filter({ has: page.getByRole('link', { name: code, exact: true }) });

/** Fills in the rest of a new order, for ten plants on one day, and saves it. */
async function orderTen(page: Page): Promise<void> {
  await page.getByRole('combobox', { name: 'Client' }).fill('Fen');
  await page.getByRole('option', { name: /Fen Hollow/ }).click();
  await page.getByLabel('Day').fill('2026-06-01');
  await page.getByRole('textbox', { name: 'Plants' }).fill('10');
  await page.getByRole('button', { name: 'Save the order' }).click();
  await page.getByRole('heading', { level: 1, name: /, Fen Hollow$/ }).waitFor();
}

it.each([
  ['a phone', PHONE],
  ['a desk', DESK],
] as const)(
  'a lot that must leave its pot goes from the board to an order that it serves, on %s',
  async (_device, size) => {
    const urgent = await story.addLot({ units: 12, plantByOn: '2026-06-10' });
    const patient = await story.addLot({ units: 40, plantByOn: '2026-09-01' });
    const page = await journey.open('grower', size);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.goto(`${journey.address}/stock/board`);
    const card = cardOf(page, await codeOf(urgent));
    await card.getByText('0 promised, 12 free to decline').waitFor();
    expect(await violationsOn(page)).toEqual([]);

    await card.getByRole('link', { name: /^New garden order/ }).click();
    await page.getByRole('heading', { level: 1, name: 'New order' }).waitFor();
    expect(await page.getByRole('combobox', { name: 'Plant' }).inputValue()).toBe('Asclepias tuberosa');
    expect(await page.getByRole('combobox', { name: 'Container' }).inputValue()).toBe('tall-1l');
    await orderTen(page);
    await page.getByRole('link', { name: await codeOf(urgent), exact: true }).waitFor();
    await page.getByText('10 reserved').first().waitFor();
    expect(await page.getByRole('link', { name: await codeOf(patient), exact: true }).count()).toBe(0);

    await page.goto(`${journey.address}/stock/board`);
    await cardOf(page, await codeOf(urgent))
      .getByText('10 promised, 2 free to decline')
      .waitFor();
  },
  JOURNEY_MS,
);

it(
  'an order for a client with one garden is saved for it, though that garden was not read yet',
  async () => {
    const lotId = await story.addLot({ units: 12 });
    const page = await journey.open('grower', DESK);
    await page.goto(`${journey.address}/gardens/new?lot=${lotId}`);
    const held: Route[] = [];
    await page.route(/gardens\.readClient/, (route) => void held.push(route));
    await orderTen(page);
    expect(held.length).toBeGreaterThan(0);
    expect(await nursery.sql('SELECT site_id FROM garden_order')).toEqual([{ site_id: story.siteId }]);
  },
  JOURNEY_MS,
);
