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

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

/** A tray of 30 with gaps and 40 more of the same plant and source elsewhere. */
async function trays({ name, code }: { name: string; code: string }) {
  const stock = stockOf(nursery);
  const plantId = await stock.addPlant({ name, code });
  const containerId = await stock.addContainer({ code: `tray-${code}`, kind: 'tray', volumeMl: 90, cells: 50 });
  const sourceId = await stock.addSource(plantId);
  const lotOf = async (units: number) =>
    stock.addLot({ plantId, containerId, sourceId, placeId: await stock.addPlace(), units });
  return { sourceId, trayId: await lotOf(30), donorId: await lotOf(40) };
}

const onHand = async (lotId: string) => (await nursery.as('viewer').stock.readLot({ lotId })).units.onHand;

it('the gaps of a tray are filled from another lot, and the tray goes on under a new label', async () => {
  const page = await journey.open('crew', PHONE);
  const { trayId, donorId } = await trays({ name: 'Asclepias tuberosa', code: 'ASTU' });
  const { code } = await nursery.as('viewer').stock.readLot({ lotId: donorId });
  await page.goto(`${journey.address}/stock/lots/${trayId}`);
  await page.getByRole('main').getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Fill gaps from another lot', exact: true }).click();
  await page.getByRole('combobox', { name: 'From which other lot' }).fill(code);
  await page.getByRole('option', { name: new RegExp(code) }).click();
  await page.getByRole('listbox').waitFor({ state: 'detached' });
  await page.getByRole('textbox', { name: 'Plants put in' }).fill('12');
  await page.getByText('The tray then holds 42 plants under a new label').waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await press(page, 'Fill the gaps');
  await page.getByText(/^12 put in: 42 plants are ASTU-26-\d{3} now\. Label them\.$/).waitFor();
  expect([await onHand(trayId), await onHand(donorId)]).toEqual([0, 28]);
});

it.each([
  ['a phone', PHONE],
  ['a desk', DESK],
] as const)('a source that is another plant is renamed with its lots on %s', async (device, size) => {
  const page = await journey.open('grower', size);
  const isPhone = device === 'a phone';
  const { sourceId } = await trays(
    isPhone ? { name: 'Aster laevis', code: 'ASLA' } : { name: 'Aster ericoides', code: 'ASER' },
  );
  const name = isPhone ? 'Liatris aspera' : 'Liatris spicata';
  await stockOf(nursery).addPlant({ name, code: isPhone ? 'LIAS' : 'LISP' });
  await page.goto(`${journey.address}/sources/${sourceId}`);
  await press(page, 'It is another plant');
  await page.getByRole('combobox', { name: 'What it really is' }).fill(name);
  await page.getByRole('option', { name: new RegExp(name) }).click();
  await page.getByRole('listbox').waitFor({ state: 'detached' });
  expect(await violationsOn(page)).toEqual([]);
  await press(page, 'Rename');
  await page.getByText(/renamed, 2 lots\. Labels keep their codes\.$/).waitFor();
  expect((await nursery.as('viewer').sources.readSource({ sourceId })).scientificName).toBe(name);
});
