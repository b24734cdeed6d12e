// Changes that are tried on a phone, seen, and then kept or dropped.
import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { overflowOf } from '../screens/visit.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let journey: Journey;
let soon: string;
let later: string;
let first: Awaited<ReturnType<GardenStory['order']>>;
let second: Awaited<ReturnType<GardenStory['order']>>;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  await nursery.sql(
    `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'scientific', 'Asclepias tuberosa', 'asclepias tuberosa')`,
    [nursery.nurseryId, randomUUID(), story.plantId],
  );
  soon = await story.addLot({ units: 12, plantByOn: '2026-06-15' });
  later = await story.addLot({ units: 5, plantByOn: '2026-09-01' });
  first = await story.order([{ units: 10 }]);
  second = await story.order([{ units: 10 }]);
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

const codeOf = async (lotId: string): Promise<string> =>
  (await nursery.sql<{ code: string }>('SELECT code FROM lot WHERE id = $1', [lotId]))[0]?.code ?? '';
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
const cardOf = (page: Page, name: string) =>
  page.getByRole('article').filter({ has: page.getByRole('heading', { name, level: 3 }) });

async function choose(page: Page, label: string, typed: string, option: RegExp): Promise<void> {
  await page.getByRole('combobox', { name: label, exact: true }).fill(typed);
  await page.getByRole('option', { name: option }).click();
}

async function expectSound(page: Page): Promise<void> {
  expect(await violationsOn(page)).toEqual([]);
  expect(await overflowOf(page)).toEqual([]);
}

it('an order’s day, a new order, a lot’s loss and a cancelled order are tried; what is dropped changes nothing, what is kept happens as it was shown', async () => {
  const page = await journey.open('grower', PHONE);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const [soonCode, laterCode] = [await codeOf(soon), await codeOf(later)];

  // From the order's page: another day, on which most of its plants are past their own.
  await page.goto(`${journey.address}/gardens/orders/${first.orderId}`);
  await button(page, 'More').first().click();
  await page.getByRole('menuitem', { name: 'What if' }).click();
  await page.getByRole('heading', { level: 1, name: 'What if' }).waitFor();
  await page.getByText('Nothing tried yet').waitFor();
  await page.getByLabel('New day').fill('2026-07-01');
  const own = cardOf(page, `${first.code}, Fen Hollow`);
  await own.getByText('loses 5').waitFor();
  await own.getByText(`Gives up 10 of ${soonCode}: they are past the plant-by day by then.`).waitFor();
  await own.getByText(`Gets 5 of ${laterCode}, given up by ${second.code}.`).waitFor();
  await own.getByText('Short by 5 plants, because:').waitFor();
  const other = cardOf(page, `${second.code}, Fen Hollow`);
  await other.getByText('gains 3').waitFor();
  await page.getByText('Keeping it accepts that 1 line becomes shorter.').waitFor();
  await expectSound(page);

  // A day that is over is said beside the field, and nothing can be kept.
  await page.getByLabel('New day').fill('2026-05-01');
  await page
    .locator('.field-error')
    .getByText(/May 20, 2026/)
    .waitFor();
  expect(await button(page, /^Keep it/).count()).toBe(0);
  await page.getByLabel('New day').fill('2026-07-01');
  await button(page, 'Drop it').click();
  await page.getByText('Nothing tried yet').waitFor();
  await page.getByText('Dropped. Nothing was changed.').first().waitFor();
  expect(await story.read(first.orderId)).toMatchObject({ dueOn: '2026-06-01', shortUnits: 0 });
  await expectSound(page);

  // A new order of many plants, and on to the form that writes it.
  await page.getByLabel('What would be different').selectOption({ label: 'A new order comes' });
  await choose(page, 'Plant', 'Asclepias', /tuberosa/);
  await choose(page, 'Container', 'tall', /tall-1l/);
  await page.getByRole('textbox', { name: 'Plants' }).fill('200');
  await page.getByLabel('Day').fill('2026-06-10');
  const added = cardOf(page, 'The new order');
  await added.getByText('gets 0 of 200').waitFor();
  await added.getByText(/17 are promised to others/).waitFor();
  await page.getByText('2 lines that share these plants stay as they are.').waitFor();
  await expectSound(page);
  await page.getByRole('link', { name: 'Keep it: write the order' }).click();
  await page.getByRole('heading', { level: 1, name: 'New order' }).waitFor();
  expect(await page.getByRole('combobox', { name: 'Plant' }).inputValue()).toBe('Asclepias tuberosa');
  expect(await page.getByRole('combobox', { name: 'Container' }).inputValue()).toBe('tall-1l');
  expect(await page.getByRole('textbox', { name: 'Plants' }).inputValue()).toBe('200');
  expect(await page.getByLabel('Day').inputValue()).toBe('2026-06-10');

  // From the lot's page: some of it is lost, and is then written off.
  await page.goto(`${journey.address}/stock/lots/${soon}`);
  await button(page, 'More').first().click();
  await page.getByRole('menuitem', { name: 'What if it is lost' }).click();
  await cardOf(page, `${first.code}, Fen Hollow`).getByText('loses 5').waitFor();
  await page.getByRole('textbox', { name: 'How many are lost' }).fill('13');
  await page.locator('.field-error').getByText(/12/).waitFor();
  await page.getByRole('textbox', { name: 'How many are lost' }).fill('3');
  await cardOf(page, `${second.code}, Fen Hollow`).getByText('loses 3').waitFor();
  await page.getByLabel('Why').selectOption('weather');
  await button(page, 'Keep it: write off').click();
  await page.getByRole('heading', { level: 1 }).getByText('Asclepias tuberosa').waitFor();
  expect(await story.unitsOf(soon)).toBe(9);
  expect((await story.read(second.orderId)).shortUnits).toBe(6);

  // From the tab: the first order is cancelled, and what it held goes to the second.
  await page.goto(`${journey.address}/gardens`);
  await page.getByRole('link', { name: 'What if', exact: true }).click();
  await page.getByText('Nothing tried yet').waitFor();
  await page.getByLabel('What would be different').selectOption({ label: 'An order is cancelled' });
  await choose(page, 'Order', first.code, new RegExp(first.code));
  await cardOf(page, `${second.code}, Fen Hollow`).getByText('gains 6').waitFor();
  await button(page, 'Keep it: cancel the order').click();
  await page.getByRole('heading', { level: 1, name: new RegExp(first.code) }).waitFor();
  expect(await story.read(first.orderId)).toMatchObject({ state: 'cancelled' });
  expect(await story.read(second.orderId)).toMatchObject({ reservedUnits: 10, shortUnits: 0 });
}, 120_000);

it('a batch that is late, and one that is lost, are tried from its page and kept', async () => {
  const trayId = await story.addContainer({ code: 'plug-72', kind: 'tray', volumeMl: 60, depthMm: 100, cells: 72 });
  const [batchId, other] = [randomUUID(), await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' })];
  const { code } = await nursery.as('grower').propagation.startBatch(
    sent({
      batchId,
      plantId: other,
      sourceId: await story.addSource(other),
      method: 'seed' as const,
      unit: 'cell' as const,
      containerId: trayId,
      units: 100,
      placeId: story.placeId,
      happenedOn: '2026-03-01',
      targetContainerId: story.containerId,
      cautiousUnits: 60,
      readyOn: '2026-06-15',
    }),
  );
  const order = await story.order([{ units: 50, plantId: other }], { dueOn: '2026-06-20' });
  const page = await journey.open('grower', PHONE);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const tryIt = async () => {
    await page.goto(`${journey.address}/propagation/${batchId}`);
    await button(page, 'More').first().click();
    await page.getByRole('menuitem', { name: 'What if it is late or fails' }).click();
    await page.getByText('keeps what it has').waitFor();
  };

  await tryIt();
  await button(page, 'Drop it').waitFor();
  expect(await button(page, /^Keep it/).count()).toBe(0);
  expect(await page.getByRole('textbox', { name: 'Plants that may be promised' }).inputValue()).toBe('60');
  await page.getByRole('textbox', { name: 'Plants that may be promised' }).fill('40');
  await cardOf(page, `${order.code}, Fen Hollow`).getByText(`Gives up 10 of ${code}: they are gone.`).waitFor();
  await expectSound(page);
  await button(page, 'Keep it: change the batch').click();
  await page.getByRole('heading', { level: 1, name: code }).waitFor();
  expect(await story.read(order.orderId)).toMatchObject({ reservedUnits: 40, shortUnits: 10 });

  await tryIt();
  await page.getByLabel('What would be different').selectOption({ label: 'A batch is lost, wholly or in part' });
  await cardOf(page, `${order.code}, Fen Hollow`).getByText('loses 40').waitFor();
  await expectSound(page);
  await page.getByLabel('Why').selectOption('failed');
  await button(page, 'Keep it: write off').click();
  await page.getByRole('heading', { level: 1, name: code }).waitFor();
  expect(await story.read(order.orderId)).toMatchObject({ reservedUnits: 0, shortUnits: 50 });
}, 120_000);

it('plants that nobody asks for, and plants that nobody would miss, are told apart', async () => {
  const unasked = await story.addReadyLotOf('Asclepias viridis', 'ASVI');
  const page = await journey.open('crew', PHONE);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(`${journey.address}/gardens/what-if?kind=lose-lot&lot=${unasked}`);
  await page.getByText('No open order asks for these plants').waitFor();
  await expectSound(page);
  const plenty = await story.addLot({ units: 500, plantByOn: '2026-09-15' });
  await page.goto(`${journey.address}/gardens/what-if?kind=lose-lot&lot=${plenty}`);
  await page.getByRole('textbox', { name: 'How many are lost' }).fill('1');
  await page.getByText('Every order keeps what it has').waitFor();
  await expectSound(page);
}, 60_000);

it('whoever may only look sees what would come of a change and cannot keep it', async () => {
  const page = await journey.open('viewer', PHONE);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(`${journey.address}/gardens/what-if?kind=move-order&order=${second.orderId}`);
  await page.getByLabel('New day').fill('2026-12-01');
  const { reservedUnits } = await story.read(second.orderId);
  await cardOf(page, `${second.code}, Fen Hollow`).getByText(`loses ${reservedUnits}`).waitFor();
  await page.getByText('Growers and owners can keep this change.').waitFor();
  expect(await button(page, /^Keep it/).count()).toBe(0);
  await button(page, 'Drop it').waitFor();
  await expectSound(page);
}, 60_000);
