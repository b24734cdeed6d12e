// A batch turns out worse: on a phone the day's page names the orders that lose plants, and each is seen to from there.
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { batchesOf } from '../../integration/propagation/batches.ts';
import { overflowOf } from '../screens/visit.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let journey: Journey;
let batch: { batchId: string; code: string };
let first: Awaited<ReturnType<GardenStory['order']>>;
let second: Awaited<ReturnType<GardenStory['order']>>;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  const batches = await batchesOf(nursery, { code: 'ASIN', name: 'Asclepias incarnata' });
  await nursery.sql(
    `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'scientific', 'Asclepias incarnata', 'asclepias incarnata')`,
    [nursery.nurseryId, randomUUID(), batches.plantId],
  );
  batch = await batches.start({ units: 100, cautiousUnits: 40, readyOn: '2026-06-15' });
  const line = { units: 20, plantId: batches.plantId, containerId: batches.potId };
  first = await story.order([line], { dueOn: '2026-06-20' });
  second = await story.order([line], { dueOn: '2026-06-22' });
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

it('the lines that lose are named with the cause and what can be done, and go when the loss is seen to', async () => {
  const page = await journey.open('grower', PHONE);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(`${journey.address}/`);
  await page.getByRole('heading', { name: 'Short' }).waitFor();
  expect(await page.getByRole('heading', { name: 'Orders that lost plants' }).count()).toBe(0);

  // Most of the batch rots; the page, open all the while, says so.
  await nursery
    .as('grower')
    .propagation.loseFromBatch(
      sent({ batchId: batch.batchId, units: 90, cause: 'rot' as const, happenedOn: '2026-05-20' }),
    );
  const [one, two] = [first, second].map(({ code }) =>
    page.getByRole('article', { name: `${code}, Asclepias incarnata` }),
  );
  if (!one || !two) throw new Error('two orders were made');
  await one.getByText('10 of 20 short').waitFor();
  await one.getByText(`10 plants lost on May 20, 2026: ${batch.code}, plants written off, by Test grower.`).waitFor();
  await two.getByText('20 of 20 short').waitFor();
  expect(await violationsOn(page)).toEqual([]);
  expect(await overflowOf(page)).toEqual([]);
  const heights = await one
    .getByRole('button')
    .or(one.getByRole('link', { name: /^What to start/ }))
    .evaluateAll((found) => found.map((each) => each.getBoundingClientRect().height));
  expect([heights.length, Math.min(...heights) >= 48]).toEqual([5, true]);

  // By keyboard alone: who else could serve, another plant, and back.
  await one.getByRole('button', { name: /^Who could serve/ }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('dialog', { name: 'Lots that could serve' }).waitFor();
  await page.keyboard.press('Escape');
  await one.getByRole('button', { name: /^Another plant/ }).press('Enter');
  const edit = page.getByRole('dialog');
  await edit.getByLabel('Plants', { exact: true }).waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await page.keyboard.press('Escape');

  await two.getByRole('button', { name: /^Set aside/ }).press('Enter');
  await page.getByLabel('What was agreed').fill('The client waits for autumn.');
  expect(await violationsOn(page)).toEqual([]);
  await page.getByRole('dialog').getByRole('button', { name: 'Set aside' }).click();
  await page.getByText(`The loss of ${second.code} is set aside.`).waitFor();
  await two.waitFor({ state: 'detached' });
  expect(await one.count()).toBe(1);
}, 120_000);

it('whoever may not change orders is told as well, without the ways to change them', async () => {
  const page = await journey.open('viewer', PHONE);
  await page.goto(`${journey.address}/`);
  const one = page.getByRole('article', { name: `${first.code}, Asclepias incarnata` });
  await one.getByText('10 of 20 short').waitFor();
  expect(await one.getByRole('button').count()).toBe(0);
  await one.getByRole('link', { name: /10 of 20 short/ }).click();
  await page.getByRole('heading', { level: 1, name: new RegExp(first.code) }).waitFor();
}, 60_000);
