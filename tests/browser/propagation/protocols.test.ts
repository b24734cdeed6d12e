import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { overflowOf } from '../screens/visit.ts';

const JOURNEY_MS = 120_000;

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  await nursery.as('owner').plants.loadReference(sent({}));
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

const sound = async (page: Page) =>
  expect({ faults: await violationsOn(page), overflow: await overflowOf(page) }).toEqual({ faults: [], overflow: [] });
const stageOf = (page: Page, name: string) =>
  page.locator('details.fold', { has: page.getByText(name, { exact: true }) }).first();

it(
  'an owner loads the reference protocols with one tap, and every plant has one',
  async () => {
    const page = await journey.open('owner', PHONE);
    await page.goto(`${journey.address}/propagation/protocols`);
    await page.getByText('reference protocols of your plants are not here yet').waitFor();
    await sound(page);
    await page.getByRole('button', { name: 'Load them' }).click();
    await page.getByText('protocols were added').waitFor();
    await page.getByText('No protocol yet.').first().waitFor({ state: 'detached' });
    await sound(page);
  },
  JOURNEY_MS,
);

it(
  'a grower revises a protocol on a phone, is told what is out of order beside its field, and sees what changed',
  async () => {
    const page = await journey.open('grower', PHONE);
    await page.goto(`${journey.address}/propagation/protocols?q=bergamot`);
    await page.getByRole('link', { name: 'seed' }).click();
    await page.getByRole('heading', { level: 1, name: 'Monarda fistulosa by seed' }).waitFor();
    await page.getByText('Of 100 cells with 2 seeds each').waitFor();
    await page.getByRole('link', { name: 'Revise' }).click();

    const emergence = stageOf(page, 'Emergence');
    await emergence.locator('summary').first().click();
    await emergence.getByLabel('Usual').fill('9');
    await emergence.getByLabel('Share of seeds that come up').fill('130');
    await page.getByLabel('What was changed, and why').fill('Slower on the cool bench');
    await emergence.locator('summary').first().click();
    await page.getByRole('button', { name: 'Save as version 2' }).click();
    await emergence.getByText('Enter a share from 0 to 100%.').waitFor();
    await sound(page);

    await emergence.getByLabel('Share of seeds that come up').fill('80.5');
    await page.getByRole('button', { name: 'Save as version 2' }).click();
    await emergence.getByText('Enter 10 days or more: the short length is 10 days.').waitFor();
    await emergence.getByLabel('Usual').fill('30');
    await page.getByRole('button', { name: 'Save as version 2' }).click();

    await page.getByText('What changed from version 1 to 2').waitFor();
    await page.getByText('Emergence: length was 21 days (10 to 42), is 30 days (10 to 42).').waitFor();
    await page.getByText('Emergence: what the share rests on was from a published source').waitFor();
    await page.getByText('Slower on the cool bench').waitFor();
    await sound(page);
    const { protocols } = (await nursery.as('crew').propagation.listProtocols({ text: 'Monarda fistulosa' })).rows[0]!;
    const { version } = await nursery.as('crew').propagation.readProtocol({ protocolId: protocols[0]!.protocolId });
    expect(version.stages.find(({ kind }) => kind === 'emergence')).toMatchObject({
      shortDays: 10,
      usualDays: 30,
      longDays: 42,
      share: 0.805,
      shareStanding: 'own setting',
      shareSource: null,
    });
    // What nobody touched went back as it was, although it was shown in Fahrenheit.
    expect(version.stages.find(({ kind }) => kind === 'stratification')).toMatchObject({
      temperatureLowC: 1,
      temperatureHighC: 5,
      durationStanding: 'confirmed',
    });
  },
  JOURNEY_MS,
);

it(
  'a grower writes a protocol for a plant without one, copied from another plant’s, and prints it',
  async () => {
    const plantId = randomUUID();
    await nursery
      .as('grower')
      .plants.addPlant(sent({ plantId, scientificName: 'Monarda punctata', rootHabit: 'fibrous' as const }));
    const page = await journey.open('grower', PHONE);
    await page.goto(`${journey.address}/propagation/protocols?have=without`);
    await page.getByRole('link', { name: 'Write one for Monarda punctata' }).click();
    await page.getByText('Copy from another protocol').click();
    await page.getByRole('combobox', { name: 'Plant to copy from' }).fill('Monarda fistulosa');
    await page.getByRole('option', { name: /Monarda fistulosa/ }).click();
    await page.getByRole('button', { name: 'Copy it here' }).click();
    await page.getByText('Copied from Monarda fistulosa. Nothing is saved yet.').waitFor();
    const hardening = stageOf(page, 'Hardening');
    await hardening.locator('summary').first().click();
    await hardening.getByRole('button', { name: 'Take out Hardening' }).click();
    await page.getByRole('button', { name: 'Save the protocol' }).click();
    await page.getByRole('heading', { level: 1, name: 'Monarda punctata by seed' }).waitFor();
    await sound(page);

    const [row] = (await nursery.as('crew').propagation.listProtocols({ plantId })).rows[0]!.protocols;
    const { version } = await nursery.as('crew').propagation.readProtocol({ protocolId: row!.protocolId });
    expect(version.stages.map(({ kind }) => kind)).toEqual([
      'stratification',
      'sowing',
      'emergence',
      'growing-on',
      'root-check',
      'ready',
    ]);
    expect(new Set(version.stages.map(({ shareStanding }) => shareStanding))).toEqual(new Set(['assumed']));

    const address = await page.getByRole('link', { name: 'Print (PDF)' }).getAttribute('href');
    const printed = await page.request.get(journey.address + address);
    expect([
      printed.status(),
      printed.headers()['content-type'],
      (await printed.body()).subarray(0, 5).toString(),
    ]).toEqual([200, 'application/pdf', '%PDF-']);
  },
  JOURNEY_MS,
);

it(
  'a schedule is drawn back from the day plants must be ready, and says when it is too late',
  async () => {
    const page = await journey.open('crew', PHONE);
    await page.goto(`${journey.address}/propagation/protocols?q=pale+purple`);
    await page.getByRole('link', { name: 'seed' }).click();
    await page.getByRole('radio', { name: 'Ready by a day' }).check();
    await page.getByLabel('Ready by', { exact: true }).fill('2026-09-15');
    await page.getByText('The last day to begin is past at the usual pace.').waitFor();
    await page.getByLabel('Ready by', { exact: true }).fill('2029-09-15');
    await page.getByText('The last day to begin is past at the usual pace.').waitFor({ state: 'detached' });
    expect(await page.getByRole('img', { name: /stages over time/ }).count()).toBe(1);
    expect(await page.getByRole('link', { name: 'Revise' }).count()).toBe(0);
    await sound(page);
  },
  JOURNEY_MS,
);
