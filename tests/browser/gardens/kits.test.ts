// Kits: put together on a page of their own, and added to an order that is new and to one that stands. On a phone.
import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { gardenStory, type GardenStory } from '../../support/gardens.ts';
import { type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let journey: Journey;
let page: Page;
let otherId: string;

beforeEach(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  otherId = await story.addPlant({ name: 'Monarda fistulosa', code: 'MOFI' });
  for (const [plantId, name] of [
    [story.plantId, 'Asclepias tuberosa'],
    [otherId, 'Monarda fistulosa'],
  ] as const) {
    await nursery.sql(
      `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'scientific', $4, lower($4))`,
      [nursery.nurseryId, randomUUID(), plantId, name],
    );
  }
  await story.addLot({ units: 20 });
  await story.addLot({ units: 7, plantId: otherId });
  journey = await openJourney(database, nursery);
  page = await journey.open('grower', PHONE);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  return async () => {
    await journey.close();
    await nursery.close();
    await database.drop();
  };
});

const JOURNEY_MS = 180_000;
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
const said = (text: string | RegExp) => page.getByText(text).first().waitFor();
const tooWideBy = (): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
async function isReadable(): Promise<void> {
  expect(await violationsOn(page)).toEqual([]);
  expect(await tooWideBy()).toBeLessThanOrEqual(0);
}

async function fillComponent(number: number, plant: RegExp, units: string): Promise<void> {
  const group = page.getByRole('group', { name: `Plant ${number}` });
  await group.getByRole('combobox', { name: 'Plant' }).fill(plant.source.slice(0, 6));
  await page.getByRole('option', { name: plant }).click();
  if (number === 1) {
    await group.getByRole('combobox', { name: 'Container' }).fill('tall');
    await page.getByRole('option', { name: /tall-1l/ }).click();
  }
  await group.getByRole('textbox', { name: 'Plants in a kit' }).fill(units);
}

const addKit = () =>
  nursery.as('grower').orders.addKit(
    sent({
      kitId: randomUUID(),
      name: 'Monarch bed',
      components: [
        { plantId: story.plantId, containerId: story.containerId, units: 3 },
        { plantId: otherId, containerId: story.containerId, units: 2 },
      ],
    }),
  );

describe('a kit', () => {
  it(
    'is put together, changed and retired on its page',
    async () => {
      await page.goto(`${journey.address}/gardens/clients`);
      await page.getByRole('link', { name: 'Kits' }).click();
      await said('No kits yet');
      await isReadable();
      await button('New kit').click();
      await page.getByRole('textbox', { name: 'Name' }).fill('Monarch bed');
      await fillComponent(1, /Asclepias tuberosa/, '3');
      await button('Another plant').click();
      await fillComponent(2, /Monarda fistulosa/, '2');
      await isReadable();
      await button('Save the kit').click();
      await said('Monarch bed is saved.');
      await said('2 in tall-1l');
      await isReadable();
      await button('Change Monarch bed').click();
      await button('Remove plant 1').click();
      await page.getByRole('textbox', { name: 'Plants in a kit' }).fill('5');
      await button('Save the kit').click();
      await said('5 in tall-1l');
      await button('Change Monarch bed').click();
      await button('Retire').click();
      await said('No kits yet');
    },
    JOURNEY_MS,
  );

  it(
    'is added to an order that stands, told before how often it can be promised',
    async () => {
      await addKit();
      const { orderId } = await story.order([]);
      await page.goto(`${journey.address}/gardens/orders/${orderId}`);
      await button('Add a kit').first().click();
      await page.getByLabel('Kit', { exact: true }).selectOption({ label: 'Monarch bed' });
      await said('Up to 3 whole kits can be promised for June 1, 2026.');
      await said(/7 can be promised, a kit takes 2/);
      await page.getByRole('textbox', { name: 'How many kits' }).fill('4');
      await said('3 of 4 can be promised whole for June 1, 2026.');
      await isReadable();
      await page.getByRole('textbox', { name: 'How many kits' }).fill('2');
      await button('Add the kit').click();
      await said('2 × Monarch bed added.');
      await said('part of 2 × Monarch bed');
      await isReadable();
      expect((await story.read(orderId)).lineRows.map(({ units, kit }) => [units, kit?.units])).toEqual([
        [6, 2],
        [4, 2],
      ]);
    },
    JOURNEY_MS,
  );

  it(
    'fills the lines of a new order, and a line that is then changed is one of its own',
    async () => {
      await addKit();
      await page.goto(`${journey.address}/gardens/new?client=${story.clientId}`);
      await page.getByLabel('Day').fill('2026-06-01');
      await button('Add a kit').click();
      await page.getByLabel('Kit', { exact: true }).selectOption({ label: 'Monarch bed' });
      await said('Up to 3 whole kits can be promised for June 1, 2026.');
      await button('Add the kit').click();
      await said('part of 1 × Monarch bed');
      await isReadable();
      await page.getByRole('group', { name: 'Line 2' }).getByRole('textbox', { name: 'Plants' }).fill('5');
      await button('Save the order').click();
      await page.getByRole('heading', { level: 1, name: /^G-26-\d{3}, Fen Hollow$/ }).waitFor();
      const orderId = page.url().split('/').at(-1) ?? '';
      expect((await story.read(orderId)).lineRows.map(({ units, kit }) => [units, kit?.units ?? null])).toEqual([
        [3, 1],
        [5, null],
      ]);
    },
    JOURNEY_MS,
  );
});
