import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { planner } from '../../../apps/server/src/features/planning/plan/solver/planner.ts';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { DESK, type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../../support/nursery.ts';
import { addProtocol } from '../../support/protocols.ts';
import { stockOf } from '../../support/stock.ts';

/** A journey looks at many screens with axe, each some seconds on a busy machine. */
const LONG_MS = 240_000;

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
  await stock.addSource(plantId);
  const trayId = await stock.addContainer({ code: 'plug-50', kind: 'tray', volumeMl: 60, depthMm: 100, cells: 50 });
  const potId = await stock.addContainer({ code: 'tall-1l', kind: 'pot' });
  await stock.addPlace({ code: 'B3' });
  await nursery.sql('UPDATE container SET width_mm = 100, length_mm = 100 WHERE nursery_id = $1', [nursery.nurseryId]);
  await addProtocol(nursery, {
    plantId,
    startContainerId: trayId,
    targetContainerId: potId,
    seedsPerCell: 2,
    stages: [
      { kind: 'sowing', days: 0 },
      { kind: 'emergence', days: [5, 10, 15], share: 0.8 },
      { kind: 'growing-on', days: [20, 25, 35], share: 0.95 },
      { kind: 'hardening', days: [5, 10, 15] },
      { kind: 'ready', days: 0 },
    ],
  });
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await planner.stop();
  await nursery.close();
  await database.drop();
});

async function choose(page: Page, label: string, typed: string, option: RegExp): Promise<void> {
  await page.getByRole('combobox', { name: label }).fill(typed);
  await page.getByRole('option', { name: option }).click();
}
/** The same address on a later day, on which the grower has signed in again. */
async function later(page: Page, address: string, day: string): Promise<Page> {
  await page.context().close();
  nursery.clock.set(day);
  const opened = await journey.open('grower', PHONE);
  await opened.goto(address);
  return opened;
}

const stage = (page: Page, name: string) => page.getByRole('listitem').filter({ hasText: name });

it(
  'what is expected becomes a line of the plan, the line a batch, and the batch pots',
  { timeout: LONG_MS },
  async () => {
    let page = await journey.open('grower', PHONE);
    await page.goto(`${journey.address}/planning`);
    await page.getByText('Nothing is wanted yet').waitFor();
    expect(await violationsOn(page)).toEqual([]);

    await page.getByRole('link', { name: 'Add an expected need' }).click();
    await page.getByRole('button', { name: 'Save' }).click();
    await page.locator('[aria-invalid=true]').first().waitFor();
    expect(await violationsOn(page)).toEqual([]);
    await choose(page, 'Plant', 'asclepias', /Asclepias tuberosa/);
    await choose(page, 'In', 'tall', /tall-1l/);
    await page.getByLabel('How exactly is it known?').selectOption({ label: 'the day' });
    await page.getByLabel('Day', { exact: true }).fill('2026-07-25');
    await page.getByRole('textbox', { name: 'Plants' }).fill('30');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Expected: Asclepias tuberosa.').waitFor();
    await page.getByText('30 plants in 1 row').waitFor();

    // Sixty-five days at the long lengths: the last day is this week's Thursday.
    await page.getByRole('link', { name: 'What to start' }).click();
    await page.getByText('Start 1 tray (50 cells) by May 21').waitFor();
    await page.getByText('start this week').waitFor();
    await page.getByText('30 plants ready for Jul 25', { exact: false }).waitFor();
    await page.getByText('What this rests on').click();
    await page.getByText('Emergence: 96%, the protocol’s figure; nothing counted yet').waitFor();
    expect(await violationsOn(page)).toEqual([]);
    await page.getByLabel('Place for what you start from here').selectOption({ label: 'B3' });
    await page.getByRole('button', { name: 'Start it now at B3: Asclepias tuberosa, 1 tray (50 cells)' }).click();
    await page.getByText(/^ASTU-26-\d{3} was started\.$/).waitFor();
    // What was started is on the way, so that nothing is missing any more.
    await page.getByText('Nothing is missing', { exact: true }).waitFor();

    await page.goto(`${journey.address}/propagation`);
    await page
      .getByRole('link', { name: /^ASTU-26-/ })
      .first()
      .click();
    await stage(page, 'Emergence').getByText('began May 20 with the step before it').waitFor();
    const batch = page.url();

    page = await later(page, batch, '2026-06-02');
    await page.getByRole('button', { name: 'Count', exact: true }).click();
    await page.getByRole('textbox', { name: 'Cells with plants' }).fill('45');
    await page.getByLabel('Day').fill('2026-06-02');
    await page.getByRole('button', { name: 'Save the count' }).click();
    await stage(page, 'Growing on').getByText('began Jun 2', { exact: false }).waitFor();

    page = await later(page, batch, '2026-06-28');
    await page.getByRole('button', { name: 'Hardening: begin today' }).click();
    await stage(page, 'Hardening').getByText('began Jun 28', { exact: false }).waitFor();
    await page.getByRole('button', { name: 'Pot', exact: true }).click();
    await page.getByRole('textbox', { name: 'Cells emptied' }).fill('42');
    await page.getByLabel('Stand at').selectOption({ label: 'B3' });
    await page.getByLabel('Day').fill('2026-06-28');
    await page.getByRole('button', { name: 'Pot them' }).click();
    await page.getByText('Potted just now').waitFor();
    await page.keyboard.press('Escape');
    await page.getByText('42 plants potted, 42 stand').waitFor();
    expect(await violationsOn(page)).toEqual([]);
    await page.context().close();
  },
);

it('what was potted is set against what is expected, at a desk', { timeout: LONG_MS }, async () => {
  const page = await journey.open('viewer', DESK);
  await page.goto(`${journey.address}/planning/outlook`);
  await page.getByText('All that is wanted in these weeks can be met.').waitFor();
  await page.getByRole('img', { name: 'Supply and demand of Asclepias tuberosa by week' }).waitFor();
  await page
    .getByRole('row', { name: /Jul 20/ })
    .getByText('30')
    .waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await page.context().close();
});
