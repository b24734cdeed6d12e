import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { DESK, type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

/** A journey looks at many screens with axe, each some seconds on a busy machine. */
const LONG_MS = 180_000;

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  await nursery.sql(`UPDATE nursery SET units = 'metric' WHERE id = $1`, [nursery.nurseryId]);
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

/** A collection with sixty grams of clean seed, and a second one of the plant to blend it with. */
async function addCollections(name: string, code: string): Promise<string> {
  const plantId = await stockOf(nursery).addPlant({ name, code });
  const sourceId = randomUUID();
  const sources = nursery.as('grower').sources;
  await sources.addSource(
    sent({
      sourceId,
      plantId,
      kind: 'seed-collection',
      provenance: 'Crooked fen',
      seedZone: '8b',
      gathered: '2025-10-04',
      rawGrams: 300,
      cleanedGrams: 60,
      purity: 0.9,
      seedsPerGram: 200,
    }),
  );
  await sources.addSource(
    sent({
      sourceId: randomUUID(),
      plantId,
      kind: 'seed-collection',
      provenance: 'Roadside',
      seedZone: '9a',
      gathered: '2025-10-09',
      cleanedGrams: 30,
    }),
  );
  return sourceId;
}

const inSheet = (page: Page) => page.getByRole('dialog');
const open = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

async function takeTooMuch(page: Page): Promise<void> {
  await open(page, 'Take out');
  await inSheet(page).getByText('given away').click();
  await inSheet(page).getByRole('textbox', { name: 'Weight' }).fill('60.5');
  await inSheet(page).getByRole('button', { name: 'Take it out' }).click();
  await inSheet(page)
    .locator('.field-error')
    .getByText(/^Enter 60 g or less: 60 g of ECP[AU]-25-\d{3} are left\.$/)
    .waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await inSheet(page).getByRole('textbox', { name: 'Weight' }).fill('10.5');
  await inSheet(page).getByRole('button', { name: 'Take it out' }).click();
  await page.getByText('49.5 g left of 60 g that came in').waitFor();
}

async function recordTest(page: Page): Promise<void> {
  await open(page, 'Record a test');
  for (const [at, sound] of [82, 95, 89, 90].entries())
    await inSheet(page)
      .getByRole('textbox', { name: `Replicate ${at + 1}` })
      .fill(String(sound));
  await inSheet(page)
    .getByText('The replicates lie 13 apart, more than the 12 allowed: the test is to be repeated.')
    .waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await inSheet(page).getByRole('button', { name: 'Save the test' }).click();
  await page.getByText('to be repeated', { exact: true }).waitFor();
}

/** 89 % of one seed fill less than 95 % of the cells, two fill 98.8 %: 144 seeds for 72 cells, 144 / (200 × 0.9) g. */
async function reckonSowing(page: Page): Promise<void> {
  const section = page.getByRole('region', { name: 'Reckon a sowing' });
  await section.getByText('144', { exact: true }).waitFor();
  await section.getByText('0.8 g', { exact: true }).waitFor();
  await section.getByRole('textbox', { name: 'Cells' }).fill('7200');
  await section.getByText('Only 49.5 g are left. That is enough for 4,455 cells.').waitFor();
}

async function blend(page: Page): Promise<void> {
  await open(page, 'Blend');
  const weights = inSheet(page).getByRole('textbox');
  await weights.nth(0).fill('30');
  await weights.nth(1).fill('10');
  await inSheet(page).getByText('75% of the blend').waitFor();
  await inSheet(page)
    .getByText(/^Together 40\sg\. Mixed: provenance, seed zone\./)
    .waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await inSheet(page).getByRole('button', { name: 'Make the blend' }).click();
  await page.getByRole('heading', { name: 'Blended from' }).waitFor();
  await page.getByText('40 g left', { exact: true }).waitFor();
}

describe.each([
  ['a phone', PHONE, 'Echinacea pallida', 'ECPA'],
  ['a desk', DESK, 'Echinacea purpurea', 'ECPU'],
] as const)('on %s', (_, size, name, code) => {
  it('seed is taken out, tested, reckoned, blended and taken back', { timeout: LONG_MS }, async () => {
    const sourceId = await addCollections(name, code);
    const page = await journey.open('grower', size);
    await page.goto(`${journey.address}/sources/${sourceId}`);
    await takeTooMuch(page);
    await recordTest(page);
    await reckonSowing(page);
    expect(await violationsOn(page)).toEqual([]);
    await blend(page);
    expect(await violationsOn(page)).toEqual([]);
    await page.getByRole('button', { name: 'Take back' }).click();
    await page.getByText('None is left.').waitFor();
    await page.goto(`${journey.address}/sources/${sourceId}`);
    await page.getByText('49.5 g left of 60 g that came in').waitFor();
    await page.context().close();
  });
});
