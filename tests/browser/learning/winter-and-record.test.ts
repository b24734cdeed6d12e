import { afterAll, beforeAll, expect, it } from 'vitest';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { DESK, type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../../support/nursery.ts';
import { addProtocol } from '../../integration/learning/evidence.ts';
import { batchesOf } from '../../integration/propagation/batches.ts';

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;
let plantId: string;
let lotId: string;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database, { day: '2026-06-20' });
  const batches = await batchesOf(nursery);
  ({ plantId } = batches);
  await addProtocol(nursery, { plantId });
  const { batchId } = await batches.start({ units: 100, on: '2025-03-01' });
  await batches.count(batchId, 60, '2025-04-01');
  ({ lotId } = await batches.pot(batchId, 60, 60, '2025-05-10'));
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

it('what lived through winter is counted on a phone, told when it does not sum, and learned from at a desk', async () => {
  const phone = await journey.open('crew', PHONE);
  await phone.goto(`${journey.address}/stock/lots/${lotId}?do=spring`);
  const sheet = phone.getByRole('dialog');
  await sheet.getByLabel('Dead').fill('8');
  await sheet.getByLabel('Not yet up').fill('12');
  await sheet.getByLabel('Up', { exact: true }).fill('30');
  await sheet.getByText('10 plants still to be told apart').waitFor();
  await sheet.getByRole('button', { name: 'Save the count' }).click();
  await sheet
    .getByText(/60 stand, you counted 50/)
    .first()
    .waitFor();
  expect(await violationsOn(phone)).toEqual([]);
  await sheet.getByRole('button', { name: /^The rest is up/ }).click();
  await sheet.getByText('Adds up').waitFor();
  await sheet.getByRole('button', { name: 'Save the count' }).click();
  await phone.getByText('40 up, 8 dead, 12 not yet up.').waitFor();
  await phone.getByText(/in spring, 40 up, 8 dead, 12 not yet up/).waitFor();

  const desk = await journey.open('owner', DESK);
  await desk.goto(`${journey.address}/propagation/record`);
  await desk.getByText('60 of 100 cells in 1 batch').waitFor();
  await desk.getByRole('button', { name: 'How counts are weighed' }).click();
  await desk.getByLabel('A protocol’s figure counts as').fill('1000');
  await desk.getByText(/Asclepias tuberosa, Emergence: 63% → 78%/).waitFor();
  expect(await violationsOn(desk)).toEqual([]);
  await desk.getByRole('button', { name: 'Save', exact: true }).click();
  await desk.getByText('78%').first().waitFor();
  await desk.getByRole('link', { name: 'Asclepias tuberosa' }).click();
  await desk.getByText('40 of 48 plants in 1 lot lived, by the spring counts.').waitFor();
  expect(await violationsOn(desk)).toEqual([]);
});
