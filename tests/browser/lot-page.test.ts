import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { violationsOn } from '../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { DESK, type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../support/nursery.ts';
import { stockOf } from '../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;
let addLot: () => Promise<string>;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  const stock = stockOf(nursery);
  const plantId = await stock.addPlant();
  const containerId = await stock.addContainer({ code: 'tall-1l' });
  await stock.addContainer({ code: 'big-4l', volumeMl: 4000 });
  const placeId = await stock.addPlace({ code: 'B1' });
  await stock.addPlace({ code: 'Y1', kind: 'yard' });
  const sourceId = await stock.addSource(plantId);
  await nursery.sql(
    `INSERT INTO pot_life_rule (nursery_id, id, basis, span, genus, standing) VALUES ($1, $2, 'confined', 'P1Y', 'Asclepias', 'common practice')`,
    [nursery.nurseryId, randomUUID()],
  );
  addLot = () => stock.addLot({ plantId, containerId, sourceId, placeId });
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

async function openLot(page: Page): Promise<string> {
  const lotId = await addLot();
  await page.goto(`${journey.address}/stock/lots/${lotId}`);
  await page.getByRole('heading', { level: 1, name: 'Asclepias tuberosa' }).waitFor();
  return lotId;
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const standing = async (lotId: string) => (await nursery.as('viewer').stock.readLot({ lotId })).units.onHand;

it('a further lot of a potting session takes two taps on its page, and one more takes it back', async () => {
  const page = await journey.open('crew', PHONE);
  await openLot(page);
  await press(page, 'Pot up');
  await page.getByRole('combobox', { name: 'Container' }).fill('big');
  await page.getByRole('option', { name: /tall-1l/ }).waitFor({ state: 'detached' });
  await page.getByRole('option', { name: /big-4l/ }).click();
  await page.getByRole('listbox').waitFor({ state: 'detached' });
  await page.getByLabel('Stand at').selectOption({ label: 'Y1' });
  await page.getByRole('dialog').getByRole('button', { name: 'Pot up', exact: true }).click();
  await page.getByText(/^40 plants potted up into ASTU-26-\d{3}\.$/).waitFor();

  const next = await openLot(page);
  await press(page, 'Pot up');
  await page.getByRole('dialog').getByRole('button', { name: 'Pot up', exact: true }).click();
  await page.getByText('Nothing of it stands here since').waitFor();
  expect(await standing(next)).toBe(0);
  await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
  await page.getByText('Taken back. Everything is as it was before.').waitFor();
  expect(await standing(next)).toBe(40);
});

it('plants that look dead are asked about once more, with the day by which the last come up', async () => {
  const page = await journey.open('crew', PHONE);
  const lotId = await openLot(page);
  await press(page, 'Lost');
  await page.getByRole('textbox', { name: 'How many' }).fill('3');
  await page.getByLabel('Why').selectOption({ label: 'looks dead' });
  await press(page, 'Write off');
  await page.getByText(/may only be asleep: the last of them come up by June 10/).waitFor();
  expect(await standing(lotId)).toBe(40);
  await press(page, 'I looked: they are dead');
  await page.getByText(/^3 plants of L-\w+ written off\.$/).waitFor();
  expect(await standing(lotId)).toBe(37);
});

it('more than there is is said beside the field, with the number that is there', async () => {
  const page = await journey.open('crew', PHONE);
  await openLot(page);
  await press(page, 'Lost');
  await page.getByRole('textbox', { name: 'How many' }).fill('41');
  await page.getByLabel('Why').selectOption({ label: 'rot' });
  await press(page, 'Write off');
  await page.getByText('Enter 40 or fewer: 40 are there.').first().waitFor();
  expect(await page.getByRole('textbox', { name: 'How many' }).getAttribute('aria-invalid')).toBe('true');
});

it.each([
  ['a phone', PHONE],
  ['a desk', DESK],
] as const)('a lot gets a rule of its own from its page, on %s', async (_device, size) => {
  const page = await journey.open('grower', size);
  const lotId = await openLot(page);
  await page.getByRole('link', { name: 'Give this lot a rule of its own', exact: true }).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByText('It reaches this lot alone').waitFor();
  await sheet.getByRole('textbox', { name: 'How long' }).fill('3');
  await sheet.getByLabel('Unit').selectOption({ label: 'months' });
  expect(await violationsOn(page)).toEqual([]);
  await press(page, 'Save the rule');
  await page.getByRole('heading', { level: 1, name: 'Asclepias tuberosa' }).waitFor();
  expect((await nursery.as('viewer').stock.readLot({ lotId })).rule).toMatchObject({ lotId, span: 'P3M' });
});

const devices = [
  ['a phone', PHONE],
  ['a desk', DESK],
] as const;
const behindMore = [
  ['Check the root ball', 'Divide or clump', 'Plant in a nursery bed', 'Split off a part'],
  ['Sell', 'Record a treatment', 'Hold', 'It is another plant'],
];

async function expectNoFaults(page: Page): Promise<void> {
  expect(await violationsOn(page)).toEqual([]);
}

async function closeSheet(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
}

it.each(devices)('the page of a lot and its main sheets are free of faults on %s', async (_device, size) => {
  const page = await journey.open('grower', size);
  await openLot(page);
  await expectNoFaults(page);
  for (const name of ['Pot up', 'Move', 'Lost', 'Count']) {
    await press(page, name);
    await page.getByRole('dialog').waitFor();
    await expectNoFaults(page);
    await closeSheet(page);
  }
});

it.each(
  devices.flatMap(([device, size]) => behindMore.map((names) => [names.join(', '), device, size, names] as const)),
)('the sheets %s are free of faults on %s', async (_names, _device, size, names) => {
  const page = await journey.open('grower', size);
  await openLot(page);
  for (const name of names) {
    await page.getByRole('main').getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('menuitem', { name, exact: true }).click();
    await page.getByRole('dialog').waitFor();
    await expectNoFaults(page);
    await closeSheet(page);
  }
});
