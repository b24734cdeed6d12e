// Edits of an order on a phone: who would gain or lose by them is seen in the form before it is sent.
import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
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
let code: string;
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
  journey = await openJourney(database, nursery);
});
// Ten plants of one lot, all promised: half of them to each of two orders.
beforeEach(async () => {
  const lotId = await story.addLot({ units: 10, plantByOn: '2026-09-01' });
  code = (await nursery.sql<{ code: string }>('SELECT code FROM lot WHERE id = $1', [lotId]))[0]?.code ?? '';
  first = await story.order([{ units: 5 }]);
  second = await story.order([{ units: 5 }]);
  return async () => {
    for (const { orderId } of [first, second]) {
      if ((await story.read(orderId)).state === 'open')
        await nursery.as('grower').gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-20' }));
    }
    await story.lose(lotId, 10);
  };
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
const cardOf = (page: Page, name: string) =>
  page.getByRole('article').filter({ has: page.getByRole('heading', { name, level: 3 }) });
const secondCard = (page: Page) => cardOf(page, `${second.code}, Fen Hollow`);

async function open(person: 'owner' | 'grower'): Promise<Page> {
  const page = await journey.open(person, PHONE);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(`${journey.address}/gardens/orders/${first.orderId}`);
  return page;
}

async function actOnLine(page: Page, action: string): Promise<void> {
  await button(page, 'More for the line of Asclepias tuberosa').click();
  await page.getByRole('menuitem', { name: action, exact: true }).click();
}

async function expectSound(page: Page): Promise<void> {
  expect(await violationsOn(page)).toEqual([]);
  expect(await overflowOf(page)).toEqual([]);
}

it('a line that asks for more names the line that would lose, before it is saved and asked about once more', async () => {
  const page = await open('owner');
  await actOnLine(page, 'Change');
  const units = page.getByRole('dialog').getByRole('textbox', { name: 'Plants', exact: true });
  expect(await page.getByText('What would come of it').count()).toBe(0);
  await units.fill('8');
  await page.getByText('The line goes behind all others, so that nobody else becomes shorter.').waitFor();
  await page.getByText('Nobody else is affected.').waitFor();
  await page.getByLabel('Keep this order’s turn').check();
  await secondCard(page).getByText('loses 3').waitFor();
  await secondCard(page).getByText(`Gives up 3 of ${code}: ${first.code} would get them.`).waitFor();
  await cardOf(page, `${first.code}, Fen Hollow`).getByText(`Gets 3 of ${code}, given up by ${second.code}.`).waitFor();
  await page.getByText('1 line would lose 3 plants.').waitFor();
  await expectSound(page);
  expect(await story.read(first.orderId)).toMatchObject({ wantedUnits: 5, reservedUnits: 5 });

  await button(page, 'Save').click();
  await page.getByText(/3 fewer\./).waitFor();
  expect(await story.read(second.orderId)).toMatchObject({ reservedUnits: 5, shortUnits: 0 });
  await button(page, 'Do it all the same').click();
  await page.getByText('The line is saved.').first().waitFor();
  expect(await story.read(first.orderId)).toMatchObject({ wantedUnits: 8, reservedUnits: 8 });
  expect(await story.read(second.orderId)).toMatchObject({ reservedUnits: 2, shortUnits: 3 });
}, 90_000);

it('a line that is withdrawn, an order that is cancelled and a line that is added show who else is affected', async () => {
  const third = await story.order([{ units: 4 }]);
  const page = await open('grower');
  await actOnLine(page, 'Withdraw the line');
  const gaining = cardOf(page, `${third.code}, Fen Hollow`);
  await gaining.getByText('gains 4').waitFor();
  await gaining.getByText(`Gets 4 of ${code}, given up by ${first.code}.`).waitFor();
  await expectSound(page);
  await button(page, 'Cancel').click();

  await button(page, 'More').first().click();
  await page.getByRole('menuitem', { name: 'Cancel the order' }).click();
  await gaining.getByText('gains 4').waitFor();
  await expectSound(page);
  await page.keyboard.press('Escape');

  await button(page, 'Add a line').first().click();
  const sheet = page.getByRole('dialog');
  for (const [label, typed, option] of [
    ['Plant', 'Asclepias', /tuberosa/],
    ['Container', 'tall', /tall-1l/],
  ] as const) {
    await sheet.getByRole('combobox', { name: label, exact: true }).fill(typed);
    await page.getByRole('option', { name: option }).click();
  }
  await sheet.getByRole('textbox', { name: 'Plants', exact: true }).fill('3');
  await sheet.getByText('Nobody else is affected.').waitFor();
  await expectSound(page);
  await page.keyboard.press('Escape');

  await button(page, 'More').first().click();
  await page.getByRole('menuitem', { name: 'Cancel the order' }).click();
  await gaining.getByText('gains 4').waitFor();
  await button(page, 'Cancel the order').click();
  await page.getByText('This order was cancelled.').first().waitFor();
  expect(await story.read(third.orderId)).toMatchObject({ reservedUnits: 4, shortUnits: 0 });
  await nursery.as('grower').gardens.cancelOrder(sent({ orderId: third.orderId, happenedOn: '2026-05-20' }));
}, 90_000);

it('plants that are tied to a line show whom they are taken from', async () => {
  await nursery.as('owner').promises.editLine(sent({ lineId: first.lineId, units: 8 }));
  const page = await open('grower');
  await actOnLine(page, 'Choose lots');
  await page.getByRole('textbox', { name: `Plants of ${code}` }).fill('7');
  await secondCard(page).getByText('loses 2').waitFor();
  await expectSound(page);
  await page.getByRole('textbox', { name: `Plants of ${code}` }).fill('5');
  await page.getByText('Nobody else is affected.').waitFor();
  await page.getByRole('textbox', { name: `Plants of ${code}` }).fill('9');
  await page.getByText('What would come of it').waitFor({ state: 'detached' });
}, 90_000);
