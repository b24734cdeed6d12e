import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startBatchLink } from '../../apps/web/src/lib/paths.ts';
import { violationsOn } from '../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { DESK, type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { openNursery, sent, type TestNursery } from '../support/nursery.ts';
import { stockOf } from '../support/stock.ts';

/** A journey looks at many screens with axe, each some seconds on a busy machine. */
const LONG_MS = 240_000;

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;
let ids: { plantId: string; sourceId: string; versionId: string; potId: string; placeId: string };

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
  const sourceId = await stock.addSource(plantId);
  const trayId = await stock.addContainer({ code: 'plug-72', kind: 'tray', volumeMl: 60, depthMm: 100, cells: 72 });
  const potId = await stock.addContainer({ code: 'tall-1l', kind: 'pot' });
  const placeId = await stock.addPlace({ code: 'B3' });
  const versionId = randomUUID();
  const grower = nursery.as('grower');
  await grower.sources.receiveSeed(sent({ sourceId, kind: 'bought' as const, grams: 20, happenedOn: '2026-01-10' }));
  await grower.propagation.addProtocol(
    sent({
      protocolId: randomUUID(),
      versionId,
      plantId,
      method: 'seed' as const,
      startUnit: 'cell' as const,
      startContainerId: trayId,
      targetContainerId: potId,
      seedsPerCell: 2,
      stages: (
        [
          ['stratification', 28, 30, 60, 1],
          ['sowing', 0, 0, 0, 1],
          ['emergence', 7, 14, 28, 0.7],
          ['growing-on', 50, 60, 80, 0.9],
          ['ready', 0, 0, 0, 1],
        ] as const
      ).map(([kind, shortDays, usualDays, longDays, share]) => ({ kind, shortDays, usualDays, longDays, share })),
    }),
  );
  ids = { plantId, sourceId, versionId, potId, placeId };
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

const stage = (page: Page, name: string) => page.getByRole('listitem').filter({ hasText: name });
const valueOf = (page: Page, name: string) => page.getByRole('textbox', { name }).inputValue();

it('a batch is started under a protocol on a phone, and moves through its stages', { timeout: LONG_MS }, async () => {
  const page = await journey.open('grower', PHONE);
  await page.goto(`${journey.address}/propagation/start`);
  await page.getByRole('combobox', { name: 'Plant' }).fill('asclepias');
  await page.getByRole('option', { name: /Asclepias tuberosa/ }).click();
  await page.getByLabel('Source').selectOption({ index: 1 });
  await page.getByLabel('Protocol').selectOption({ label: 'Seed, version 1' });
  await page.getByLabel('Begins with').selectOption({ label: 'Sowing' });
  await page.getByLabel('Place').selectOption({ label: 'B3' });
  await page.getByLabel('Day').fill('2026-05-01');

  await page.getByText('How many for the plants I want?').click();
  await page.getByRole('textbox', { name: 'Plants wanted' }).fill('50');
  await page.getByText(/tray, 72 cells/).waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await page.getByRole('button', { name: 'Take these numbers' }).click();
  await page.getByText('1 × 72 cells = 72 cells').waitFor();
  await expect.poll(() => valueOf(page, 'Plants you would promise')).toBe('50');
  expect([await valueOf(page, 'Plants you usually get'), await page.getByLabel('Ready on').inputValue()]).toEqual([
    '59',
    '2026-07-19',
  ]);
  await page.getByRole('textbox', { name: 'Seed taken' }).fill('25');
  await page.getByRole('button', { name: 'Start the batch' }).click();
  await page.getByText(/20 g/).first().waitFor();
  await page.getByRole('textbox', { name: 'Seed taken' }).fill('5');
  await page.getByRole('button', { name: 'Start the batch' }).click();

  await page.getByRole('heading', { level: 1, name: /^ASTU-26-\d{3}$/ }).waitFor();
  await stage(page, 'Emergence').getByText('began May 1 with the step before it').waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await page.getByRole('button', { name: 'Growing on: begin today' }).click();
  await stage(page, 'Growing on').getByText('began May 20').waitFor();
  await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
  await stage(page, 'Emergence').getByText('now', { exact: true }).waitFor();

  await page.getByRole('button', { name: 'Begin a stage on another day' }).click();
  await page.getByRole('dialog').getByLabel('Day').fill('2026-04-30');
  await page.getByRole('button', { name: 'Begin the stage' }).click();
  await page.getByRole('dialog').getByText('May 1, 2026', { exact: false }).first().waitFor();
  expect(await violationsOn(page)).toEqual([]);
});

it('the plan’s link fills the form in at a desk, and what the plan says stays', { timeout: LONG_MS }, async () => {
  const page = await journey.open('grower', DESK);
  const { to, search } = startBatchLink({
    plantId: ids.plantId,
    protocolVersionId: ids.versionId,
    sourceId: ids.sourceId,
    trays: 2,
    seedsSown: 288,
    seedGrams: 1.5,
    targetContainerId: ids.potId,
    cautiousUnits: 80,
    usualUnits: 95,
    readyOn: '2026-09-01',
    stagePosition: 1,
    placeId: ids.placeId,
    day: '2026-05-02',
  });
  await page.goto(
    `${journey.address}${to}?${new URLSearchParams(Object.entries(search).map(([name, value]) => [name, String(value)]))}`,
  );
  await page.getByText('2 × 72 cells = 144 cells').waitFor();
  expect([
    await valueOf(page, 'Plants you would promise'),
    await valueOf(page, 'Plants you usually get'),
    await page.getByLabel('Ready on').inputValue(),
    await valueOf(page, 'Seed taken'),
  ]).toEqual(['80', '95', '2026-09-01', '1.5']);
  await page.getByText(/^The record suggests/).waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await page.getByRole('button', { name: 'Start the batch' }).click();
  await page.getByRole('heading', { level: 1, name: /^ASTU-26-\d{3}$/ }).waitFor();
  await page.getByText('September 1, 2026', { exact: false }).first().waitFor();
  await page.getByRole('button', { name: 'Take it over' }).click();
  await page.getByText('It is what is noted already.').waitFor();
  expect(await violationsOn(page)).toEqual([]);
});

it('a batch that is too long in its stage says so on its page and in the list', { timeout: LONG_MS }, async () => {
  const batchId = randomUUID();
  await nursery.as('grower').propagation.startBatch(
    sent({
      batchId,
      plantId: ids.plantId,
      sourceId: ids.sourceId,
      method: 'seed' as const,
      protocolVersionId: ids.versionId,
      units: 72,
      placeId: ids.placeId,
      happenedOn: '2026-02-01',
    }),
  );
  const page = await journey.open('viewer', PHONE);
  await page.goto(`${journey.address}/propagation/${batchId}`);
  await page
    .getByText('Cold, moist stratification has gone on 48 days longer than nine batches of ten take.', { exact: false })
    .waitFor();
  expect(await page.getByRole('button', { name: /begin today/ }).count()).toBe(0);
  expect(await violationsOn(page)).toEqual([]);
  await page.goto(`${journey.address}/propagation?sort=stageDue`);
  await page.getByText('too long').first().waitFor();
  expect(await violationsOn(page)).toEqual([]);
});
