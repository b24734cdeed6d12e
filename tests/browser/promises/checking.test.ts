// An order that cannot be met as it is asked for: typed on a phone, understood, changed until it can be, and kept.
import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let journey: Journey;
let sister: string;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  sister = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN', rootHabit: 'fibrous' });
  await nursery.sql(
    `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'scientific', 'Asclepias tuberosa', 'asclepias tuberosa')`,
    [nursery.nurseryId, randomUUID(), story.plantId],
  );
  await story.addLot({ units: 12 });
  await story.addLot({ units: 5, plantId: sister });
  const growing = await story.addLot({ units: 20 });
  await nursery.sql('UPDATE lot SET ready_on = $3 WHERE nursery_id = $1 AND id = $2', [
    nursery.nurseryId,
    growing,
    '2026-06-20',
  ]);
  await story.order([{ units: 4 }]);
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const said = (page: Page, text: string | RegExp) => page.getByText(text).first().waitFor();

async function choose(page: Page, label: string, typed: string, option: RegExp): Promise<void> {
  await page.getByRole('combobox', { name: label, exact: true }).fill(typed);
  await page.getByRole('option', { name: option }).click();
}

it('is told why and from when, takes another plant too, moves its day, and is kept without a shortage', async () => {
  const page = await journey.open('grower', PHONE);
  await page.goto(`${journey.address}/gardens/new`);
  await choose(page, 'Client', 'fen', /Fen Hollow/);
  await page.getByLabel('Site').selectOption({ label: 'South slope' });
  await page.getByLabel('Day').fill('2026-06-01');
  await choose(page, 'Plant', 'asclepias', /Asclepias tuberosa/);
  await choose(page, 'Container', 'tall', /tall-1l/);
  await said(page, 'Up to 8 can be promised for June 1, 2026.');

  await page.getByRole('textbox', { name: 'Plants' }).fill('30');
  await said(page, '8 of 30 can be promised for June 1, 2026; 22 would be short.');
  await said(page, '4 are promised to others (G-26-001).');
  await said(page, '20 are not ready by then');
  await said(page, 'On no later day');
  expect(await violationsOn(page)).toEqual([]);

  await button(page, 'Accept too: Asclepias incarnata in tall-1l').click();
  await said(page, '13 of 30 can be promised for June 1, 2026; 17 would be short.');
  await said(page, 'All 30 from June 20, 2026 on');
  await button(page, 'Move the day to June 20, 2026').click();
  await said(page, 'All 30 can be promised for June 20, 2026.');
  expect(await page.getByLabel('Day').inputValue()).toBe('2026-06-20');
  expect(await violationsOn(page)).toEqual([]);

  await button(page, 'Save the order').click();
  await page.getByRole('heading', { level: 1, name: /^G-26-\d{3}, Fen Hollow$/ }).waitFor();
  await page.getByText('Why these plants').click();
  await said(page, /all else that serves this line is promised to others\.$/);
  await said(page, '1 line that takes such plants was promised them earlier and is served first.');
  expect(await violationsOn(page)).toEqual([]);
  const [short] = await nursery.sql<{ units: number }>(
    'SELECT coalesce(sum(l.units), 0)::int - (SELECT sum(units)::int FROM reservation) AS units FROM order_line l',
  );
  expect(short?.units).toBe(0);
});
