import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { violationsOn } from '../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { DESK, type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../support/nursery.ts';
import { stockOf } from '../support/stock.ts';

/** A journey looks at many screens with axe, each some seconds on a busy machine. */
const LONG_MS = 180_000;

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  const stock = stockOf(nursery);
  const plantId = await stock.addPlant();
  await nursery.sql(
    `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'scientific', 'Asclepias tuberosa', 'asclepias tuberosa')`,
    [nursery.nurseryId, randomUUID(), plantId],
  );
  await nursery.sql(
    `INSERT INTO pot_life_rule (nursery_id, id, basis, span, genus, standing) VALUES ($1, $2, 'confined', 'P1Y', 'Asclepias', 'common practice')`,
    [nursery.nurseryId, randomUUID()],
  );
  await stock.addSource(plantId);
  await stock.addContainer({ code: 'plug-72', kind: 'tray', volumeMl: 60, depthMm: 100, cells: 72 });
  await stock.addContainer({ code: 'tall-1l', kind: 'pot' });
  await stock.addPlace({ code: 'B3' });
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

async function choose(page: Page, label: string, typed: string, option: RegExp): Promise<void> {
  await page.getByRole('combobox', { name: label }).fill(typed);
  await page.getByRole('option', { name: option }).click();
}

async function startBatch(page: Page): Promise<void> {
  await page.goto(`${journey.address}/propagation`);
  await page.getByRole('link', { name: 'Start a batch' }).first().click();
  await choose(page, 'Plant', 'asclepias', /Asclepias tuberosa/);
  await page.getByLabel('Source').selectOption({ index: 1 });
  await choose(page, 'Tray or pot', 'plug', /plug-72/);
  await page.getByRole('textbox', { name: 'Trays' }).fill('2');
  await page.getByText('2 × 72 cells = 144 cells').waitFor();
  await page.getByLabel('Place').selectOption({ label: 'B3' });
  await page.getByLabel('Day').fill('2026-03-02');
  await choose(page, 'Potted into', 'tall', /tall-1l/);
  await page.getByRole('textbox', { name: 'Plants you would promise' }).fill('90');
  await page.getByRole('button', { name: 'Start the batch' }).click();
  await page.getByRole('heading', { level: 1, name: /^ASTU-26-\d{3}$/ }).waitFor();
}

async function countAlive(page: Page, alive: string, day: string): Promise<void> {
  await page.getByRole('button', { name: 'Count', exact: true }).click();
  await page.getByRole('textbox', { name: 'Cells with plants' }).fill(alive);
  await page.getByLabel('Day').fill(day);
  await page.getByRole('button', { name: 'Save the count' }).click();
}

it.each([
  ['a phone', PHONE],
  ['a desk', DESK],
] as const)('a batch goes from sowing to pots on %s', { timeout: LONG_MS }, async (_device, size) => {
  const page = await journey.open('grower', size);
  await startBatch(page);
  expect(await violationsOn(page)).toEqual([]);

  await countAlive(page, '150', '2026-03-20');
  await page.getByRole('dialog').getByText('Enter 144 or fewer').first().waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await page.getByRole('textbox', { name: 'Cells with plants' }).fill('20');
  await page.getByRole('button', { name: 'Save the count' }).click();
  await page.getByRole('row', { name: /Mar 20 18 20/ }).waitFor();
  await countAlive(page, '120', '2026-04-05');
  await page.getByRole('img', { name: 'Chart of 2 counts' }).waitFor();
  expect(await page.getByText('March 20, 2027', { exact: false }).first().isVisible()).toBe(true);

  await page.getByRole('button', { name: 'Pot', exact: true }).click();
  await page.getByRole('textbox', { name: 'Cells emptied' }).fill('60');
  await page.getByLabel('Stand at').selectOption({ label: 'B3' });
  await page.getByLabel('Day').fill('2026-05-18');
  await page.getByRole('button', { name: 'Pot them' }).click();
  await page.getByText('Potted just now').waitFor();
  expect(await violationsOn(page)).toEqual([]);

  // A further lot costs a number and a tap: container, place and day are still filled in.
  await page.getByRole('textbox', { name: 'Cells emptied' }).fill('24');
  await page.getByRole('button', { name: 'Pot them' }).click();
  await page.getByText(/, 24 plants/).waitFor();
  await page.keyboard.press('Escape');
  await page.getByText('60 plants potted, 60 stand').waitFor();
  await page.getByText('24 plants potted, 24 stand').waitFor();

  await page.getByRole('button', { name: 'More' }).last().click();
  await page.getByRole('menuitem', { name: 'Close' }).click();
  await page.getByRole('button', { name: 'Close the batch' }).click();
  await page.getByRole('dialog').getByText('60 cells still stand there', { exact: false }).first().waitFor();
  await page.getByLabel('Why they are written off').selectOption({ label: 'never came up or rooted' });
  await page.getByRole('button', { name: 'Close the batch' }).click();
  await page.getByText('Closed on May 18, 2026.').waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await page.context().close();
});

it('a helper sees a batch change while looking at it', { timeout: LONG_MS }, async () => {
  const grower = await journey.open('grower', DESK);
  await startBatch(grower);
  const crew = await journey.open('crew', PHONE);
  await crew.goto(grower.url());
  await crew.getByText('Nothing has been counted yet.').waitFor();
  await countAlive(grower, '70', '2026-04-01');
  await crew.getByRole('row', { name: /Apr 1 30 70/ }).waitFor();
  await crew.context().close();
  await grower.context().close();
});

it('the list of batches has no fault of access on a phone and at a desk', { timeout: LONG_MS }, async () => {
  for (const size of [PHONE, DESK]) {
    const page = await journey.open('viewer', size);
    await page.goto(`${journey.address}/propagation?state=all`);
    await page
      .getByRole('link', { name: /^ASTU-26-/ })
      .first()
      .waitFor();
    expect(await violationsOn(page)).toEqual([]);
    await page.context().close();
  }
});
