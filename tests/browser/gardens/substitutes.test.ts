// What may stand in for a plant: the rules a grower writes, what they offer while a line is typed, and what an order for natives refuses. On a phone.
import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { violationsOn } from '../../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { gardenStory, type GardenStory } from '../../support/gardens.ts';
import { type Journey, openJourney, PHONE } from '../../support/browser/journey.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let journey: Journey;
let page: Page;

beforeEach(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  journey = await openJourney(database, nursery);
  page = await journey.open('grower', PHONE);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  return async () => {
    await journey.close();
    await nursery.close();
    await database.drop();
  };
});

const JOURNEY_MS = 180_000;
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
const said = (text: string | RegExp) => page.getByText(text).first().waitFor();
const tooWideBy = (): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
async function isReadable(): Promise<void> {
  expect(await violationsOn(page)).toEqual([]);
  expect(await tooWideBy()).toBeLessThanOrEqual(0);
}

/** A milkweed of the region and one of another land that people call by the same name, both in the story's pot, and the story's own plant in a larger one. */
async function standing(): Promise<{ otherId: string; foreignId: string; bigId: string }> {
  await nursery.as('grower').clients.editSite(sent({ siteId: story.siteId, name: 'South slope', region: 'IA' }));
  const otherId = await story.addPlant({ name: 'Asclepias verticillata', code: 'ASVE' });
  const foreignId = await story.addPlant({ name: 'Asclepias curassavica', code: 'ASCU' });
  const bigId = await story.addContainer({ code: 'tall-4l', volumeMl: 4000 });
  for (const plantId of [story.plantId, otherId])
    await nursery.sql(`UPDATE plant SET native_regions = '{IA}' WHERE nursery_id = $1 AND id = $2`, [
      nursery.nurseryId,
      plantId,
    ]);
  for (const [plantId, name] of [
    [story.plantId, 'Asclepias tuberosa'],
    [otherId, 'Asclepias verticillata'],
    [foreignId, 'Asclepias curassavica'],
  ] as const) {
    await nursery.sql(
      `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'scientific', $4, lower($4))`,
      [nursery.nurseryId, randomUUID(), plantId, name],
    );
  }
  await story.addLot({ units: 6, plantId: otherId });
  await story.addLot({ units: 6, plantId: foreignId });
  await story.addLot({ units: 6, containerId: bigId });
  return { otherId, foreignId, bigId };
}

async function choose(label: string, typed: string, option: RegExp): Promise<void> {
  await page.getByRole('combobox', { name: label }).first().fill(typed);
  await page.getByRole('option', { name: option }).click();
}

describe('the rules', () => {
  it(
    'are written, changed, retired and put back',
    async () => {
      await page.goto(`${journey.address}/plants/windows`);
      await page.getByRole('link', { name: 'What may stand in' }).click();
      await page.getByRole('heading', { level: 1, name: 'What may stand in' }).waitFor();
      await said('No rules yet');
      await isReadable();
      await button('Add a rule').click();
      await page.getByRole('radio', { name: /^another native of the genus/ }).check();
      await page.getByRole('radio', { name: 'a genus' }).check();
      await button('Save the rule').click();
      // A genus that nobody typed is asked for beside its field.
      await page.getByRole('link', { name: /^Genus/ }).waitFor();
      await isReadable();
      await page.getByRole('textbox', { name: 'Genus' }).fill('Asclepias');
      await page.getByRole('textbox', { name: 'Penalty' }).fill('3');
      await button('Save the rule').click();
      await said('All of Asclepias.');
      await said(/Penalty 3\./);
      await said('own setting');
      await said('Reaches 1 plant.');
      await isReadable();
      await button('Change: All of Asclepias, another native of the genus').click();
      await page.getByRole('textbox', { name: 'Penalty' }).fill('5');
      await button('Save the rule').click();
      await said(/Penalty 5\./);
      await button('Change: All of Asclepias, another native of the genus').click();
      await button('Retire').click();
      await said('No rules yet');
      await button('Undo').click();
      await said('All of Asclepias.');
    },
    JOURNEY_MS,
  );
});

describe('a line that is typed', () => {
  it(
    'is offered what the rules name, each with its reason, and takes one or all of it with a tap',
    async () => {
      await standing();
      const { addSubstitutionRule } = nursery.as('grower').orders;
      await addSubstitutionRule(sent({ ruleId: randomUUID(), kind: 'another-size' as const, reach: {}, penalty: 2 }));
      await addSubstitutionRule(
        sent({ ruleId: randomUUID(), kind: 'same-genus' as const, reach: { genus: 'Asclepias' }, penalty: 4 }),
      );
      await addSubstitutionRule(sent({ ruleId: randomUUID(), kind: 'same-habit' as const, reach: {}, penalty: 8 }));
      const { orderId } = await story.order([]);
      await page.goto(`${journey.address}/gardens/orders/${orderId}`);
      await button('Add a line').first().click();
      await choose('Plant', 'asclepias tub', /Asclepias tuberosa/);
      await choose('Container', 'tall', /tall-1l/);
      await said('2 things could stand in by your rules.');
      await page.getByText('Which, and why').click();
      await said('The same plant in another pot.');
      await said('Another Asclepias. Native to IA.');
      await said(
        /Plants of the same habit are not offered: this plant’s page does not tell its height, light, and months of bloom/,
      );
      await said(/Left out, since not known to be native to IA:\s*Asclepias curassavica/);
      await isReadable();
      await button('Take Asclepias verticillata, tall-1l').click();
      await said('1 thing could stand in by your rules. This line takes 1 already.');
      await button('Take it').click();
      await said('Nothing more could stand in by your rules. This line takes 2 already.');
      await page.getByRole('textbox', { name: 'Plants', exact: true }).fill('6');
      await button('Add a line').last().click();
      await said(/6 plants of Asclepias tuberosa added/);
      await said(/tall-4l \(penalty 2\)/);
      const [line] = (await story.read(orderId)).lineRows;
      expect(
        line?.alternatives.map(({ scientificName, containerCode, penalty }) => [
          scientificName,
          containerCode,
          penalty,
        ]),
      ).toEqual([
        ['Asclepias tuberosa', 'tall-4l', 2],
        ['Asclepias verticillata', 'tall-1l', 4],
      ]);
      expect(line?.reservedUnits).toBe(6);

      // What was taken keeps its penalty when the line is changed, and one that is removed is offered again.
      await button('More for the line of Asclepias tuberosa').click();
      await page.getByRole('menuitem', { name: 'Change' }).click();
      await button('Remove choice 2').click();
      await said('1 thing could stand in by your rules. This line takes 1 already.');
      await isReadable();
      await button('Save').click();
      await said('The line is saved.');
      expect(
        (await story.read(orderId)).lineRows[0]?.alternatives.map(({ scientificName, penalty }) => [
          scientificName,
          penalty,
        ]),
      ).toEqual([['Asclepias tuberosa', 2]]);
    },
    JOURNEY_MS,
  );
});

describe('an order that takes only natives', () => {
  it(
    'says beside the plant that it is not native, and marks the lines that break it later',
    async () => {
      const { foreignId } = await standing();
      await page.goto(`${journey.address}/gardens/new?client=${story.clientId}`);
      await page.getByRole('checkbox', { name: 'Only what is native here' }).check();
      await page.getByLabel('Day').fill('2026-06-01');
      await choose('Plant', 'asclepias cur', /Asclepias curassavica/);
      await choose('Container', 'tall', /tall-1l/);
      await page.getByRole('textbox', { name: 'Plants', exact: true }).fill('3');
      await button('Save the order').click();
      await page.getByRole('link', { name: /Asclepias curassavica is not known to be native to IA/ }).waitFor();
      await isReadable();

      const { orderId } = await story.order([{ units: 3, plantId: foreignId }]);
      await page.goto(`${journey.address}/gardens/orders/${orderId}`);
      await button('More').click();
      await page.getByRole('menuitem', { name: 'Change the order' }).click();
      await page.getByRole('checkbox', { name: 'Only what is native here' }).check();
      await button('Save').click();
      await said('Takes only what is native to IA.');
      await said(/Not known to be native to IA, so none of it is reserved here/);
      await said(/6 are not known to be native to the site’s region/);
      await isReadable();
    },
    JOURNEY_MS,
  );
});
