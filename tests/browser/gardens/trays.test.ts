// A line of plants in plug trays, typed on a phone: whole trays are asked for while it is typed, and again beside the field.
import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { beforeEach, expect, it } from 'vitest';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { gardenStory, type GardenStory } from '../../support/gardens.ts';
import { type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let journey: Journey;
let page: Page;

beforeEach(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  await nursery.sql(
    `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'scientific', 'Asclepias tuberosa', 'asclepias tuberosa')`,
    [nursery.nurseryId, randomUUID(), story.plantId],
  );
  await story.addLot({
    units: 100,
    containerId: await story.addContainer({ code: 'plug-72', kind: 'tray', volumeMl: 60, depthMm: 100, cells: 72 }),
  });
  journey = await openJourney(database, nursery);
  page = await journey.open('grower', PHONE);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  return async () => {
    await journey.close();
    await nursery.close();
    await database.drop();
  };
});

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
const said = (text: string | RegExp) => page.getByText(text).first().waitFor();

async function choose(label: string, typed: string, option: RegExp): Promise<void> {
  await page.getByRole('combobox', { name: label }).first().fill(typed);
  await page.getByRole('option', { name: option }).click();
}

it('whole trays are asked for, and what is short of one is told', async () => {
  const { orderId } = await story.order([]);
  await page.goto(`${journey.address}/gardens/orders/${orderId}`);
  await button('Add a line').first().click();
  await choose('Plant', 'asclepias', /Asclepias tuberosa/);
  await choose('Container', 'plug', /plug-72/);
  await said('Up to 72 can be promised for June 1, 2026.');
  const units = page.getByRole('textbox', { name: 'Plants', exact: true });
  await units.fill('100');
  await said(/72 cells a tray: enter 72 or 144\./);
  await button('Add a line').last().click();
  await page.getByRole('link', { name: /72 cells a tray: enter 72 or 144/ }).waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await units.fill('144');
  await said(/72 of 144 can be promised for June 1, 2026; 72 would be short\./);
  await button('Add a line').last().click();
  await said(/144 plants of Asclepias tuberosa added/);
  await said(/28 plants fill no whole tray/);
  expect((await story.read(orderId)).lineRows).toMatchObject([{ units: 144, reservedUnits: 72, shortUnits: 72 }]);
}, 180_000);
