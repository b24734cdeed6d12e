import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { violationsOn } from '../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { DESK, type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { openNursery, sent, type TestNursery } from '../support/nursery.ts';

/** Journeys of hundreds of strokes, on machines that do much else at the same time. */
const JOURNEY_MS = 240_000;

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  await nursery.as('owner').plants.loadReference(sent({}));
  for (const code of ['B1', 'B2', 'B3', 'Y1', 'Y2'])
    await nursery
      .as()
      .stock.addPlace(sent({ placeId: randomUUID(), code, kind: code.startsWith('B') ? 'bench' : 'yard' }));
  await nursery.as().stock.addPlace(sent({ placeId: randomUUID(), code: 'BED', kind: 'nursery-bed' }));
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

/** What axe finds on the whole page at once: cut off by the fold or lying under the phone's bar, a button would count as too small. */
async function faultsOn(page: Page): Promise<string[]> {
  const size = page.viewportSize()!;
  const height = await page.evaluate(() =>
    Math.max(
      document.documentElement.scrollHeight,
      ...Array.from(document.querySelectorAll('.overlay-box'), (box) => box.scrollHeight + 200),
    ),
  );
  await page.setViewportSize({ width: size.width, height: Math.max(size.height, height) });
  const faults = await violationsOn(page);
  await page.setViewportSize(size);
  return faults;
}

interface Listed {
  plant: string;
  units: number;
  container: string;
  place: string;
  since: string;
}

/** A list as it lies on the table: fifty lots, place by place, in which container and day change every few rows. */
async function listOfFifty(): Promise<Listed[]> {
  const plants = (await nursery.as().plants.listPlants({ perPage: 200 })).rows.map((row) => row.code);
  const containers = (await nursery.as().plants.listContainers({}))
    .filter((row) => row.kind === 'pot' || row.kind === 'tray')
    .map((row) => row.code);
  return Array.from({ length: 50 }, (_, i) => ({
    plant: plants[(i * 7) % plants.length]!,
    units: 6 + ((i * 37) % 230),
    container: containers[Math.floor(i / 5) % containers.length]!,
    place: ['B1', 'B2', 'B3', 'Y1', 'Y2'][Math.floor(i / 10)]!,
    since: ['9/14/25', 'fall 2025', '4/14', '2024'][Math.floor(i / 4) % 4]!,
  }));
}

/** A keyboard that counts: each character and each key is one stroke, each cell that is typed into one entry. */
function countingKeyboard(page: Page) {
  const count = { strokes: 0, entries: 0 };
  return {
    count,
    type: async (text: string) => {
      await page.keyboard.type(text);
      count.strokes += text.length;
      count.entries += 1;
    },
    press: async (key: string, times = 1) => {
      for (let i = 0; i < times; i += 1) await page.keyboard.press(key);
      count.strokes += times;
    },
  };
}

const rowsTaken = () =>
  nursery.sql<Listed>(
    `
  SELECT p.code AS plant, a.units, c.code AS container, w.code AS place, l.potted_on::text || ' ' || l.potted_precision AS since
    FROM lot l JOIN plant p ON p.id = l.plant_id JOIN container c ON c.id = l.container_id JOIN account a ON a.lot_id = l.id AND a.units > 0 JOIN place w ON w.id = a.place_id
    JOIN intake i ON i.lot_id = l.id AND i.kind = 'opening' WHERE l.nursery_id = $1 ORDER BY l.id`,
    [nursery.nurseryId],
  );

const DAYS: Record<string, string> = {
  '9/14/25': '2025-09-14 day',
  'fall 2025': '2025-09-01 season',
  '4/14': '2026-04-14 day',
  '2024': '2024-01-01 year',
};
const inOrder = (rows: Listed[]) =>
  rows.map((row) => JSON.stringify([row.plant, row.units, row.container, row.place, row.since])).toSorted();

it(
  'fifty opening lots are typed from a list by the keyboard alone, at few strokes a row',
  async () => {
    const list = await listOfFifty();
    const page = await journey.open('grower', DESK);
    await page.goto(`${journey.address}/stock/opening`);
    await page.getByRole('combobox', { name: 'Plant, row 1' }).focus();
    const keyboard = countingKeyboard(page);
    const startedAt = performance.now();
    for (const [index, row] of list.entries()) {
      const above = list[index - 1];
      await keyboard.type(row.plant);
      await keyboard.press('Enter');
      await keyboard.type(String(row.units));
      // What stays as in the row above is passed over; after the last change of a row Enter goes on.
      const rest = (['container', 'place', 'since'] as const).map((cell) => ({
        cell,
        changes: row[cell] !== above?.[cell],
      }));
      let passed = 0;
      for (const { cell, changes } of rest) {
        passed += 1;
        if (!changes) continue;
        await keyboard.press('Tab', passed);
        passed = 0;
        await keyboard.type(row[cell]);
      }
      await keyboard.press('Enter');
    }
    await page.getByRole('button', { name: 'Take in 50 lots' }).waitFor();
    await expect.poll(() => page.locator('.pick-taxon').count(), { timeout: 20_000 }).toBe(50);
    expect(await faultsOn(page)).toEqual([]);

    const strokes = keyboard.count.strokes / 50;
    const entries = keyboard.count.entries / 50;
    const seconds = (performance.now() - startedAt) / 1000;
    console.log(
      `An opening row took ${strokes.toFixed(1)} strokes and ${entries.toFixed(2)} entries on average; the browser took ${seconds.toFixed(0)} s for all fifty.`,
    );
    // A quarter of an hour is 900 seconds: at eighteen strokes a row one stroke a second would do.
    expect(strokes).toBeLessThanOrEqual(14);
    expect(entries).toBeLessThanOrEqual(3);

    await page.getByRole('button', { name: 'Take in 50 lots' }).click();
    await page.getByText('50 lots are taken in.').waitFor();
    await page
      .getByRole('link', { name: /^[A-Z]{4,5}-2\d-\d{3}$/ })
      .nth(49)
      .waitFor();
    expect(inOrder(await rowsTaken())).toEqual(inOrder(list.map((row) => ({ ...row, since: DAYS[row.since]! }))));

    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Taken back. Everything is as it was before.').waitFor();
    expect(await rowsTaken()).toEqual([]);
    await page.context().close();
  },
  JOURNEY_MS,
);

it(
  'an opening list on a phone says beside the field what is wrong, and is kept until it is right',
  async () => {
    const page = await journey.open('grower', PHONE);
    await page.goto(`${journey.address}/stock/opening`);
    const cell = (name: string, nth = 1) =>
      page.getByRole(name === 'Units' || name === 'In it since' ? 'textbox' : 'combobox', {
        name: `${name}, row ${nth}`,
      });
    await cell('Plant').fill('milkweed');
    await page
      .getByRole('option', { name: /Asclepias tuberosa/ })
      .first()
      .click();
    await cell('Units').fill('0');
    await cell('Container').fill('tray');
    await page.getByRole('option').first().click();
    await cell('Place').fill('b1');
    await cell('In it since').fill('sep 2025');
    await page.getByText('= September 2025').waitFor();
    await page.getByRole('button', { name: 'Take in 1 lot' }).click();
    await page.getByText('Enter 1 or more.').first().waitFor();
    expect(await faultsOn(page)).toEqual([]);

    await page.reload();
    expect(await cell('Plant').inputValue()).toBe('Asclepias tuberosa');
    await cell('Units').fill('24');
    await page.getByRole('button', { name: 'Next row' }).click();
    // The second row has container, place and day already.
    expect(await cell('Place', 2).inputValue()).toBe('B1');
    expect(await cell('In it since', 2).inputValue()).toBe('sep 2025');
    await cell('Plant', 2).fill('ECPU');
    await cell('Units', 2).fill('7');
    await cell('Units', 2).blur();
    await page.getByRole('button', { name: /Row 1: Asclepias tuberosa · 24/ }).waitFor();
    expect(await faultsOn(page)).toEqual([]);
    await page.getByRole('button', { name: 'Take in 2 lots' }).click();
    await page.getByText('2 lots are taken in.').waitFor();
    expect((await rowsTaken()).map((row) => row.units).toSorted((a, b) => a - b)).toEqual([7, 24]);
    expect(await faultsOn(page)).toEqual([]);
    await page.context().close();
  },
  JOURNEY_MS,
);

it(
  'a name of several plants is asked about and never guessed',
  async () => {
    const page = await journey.open('grower', DESK);
    await page.goto(`${journey.address}/stock/opening`);
    const [shared] = await nursery.sql<{ name: string; plants: number }>(
      `SELECT min(name) AS name, count(DISTINCT plant_id)::int AS plants FROM plant_name WHERE nursery_id = $1 AND kind = 'common' GROUP BY name_key HAVING count(DISTINCT plant_id) > 1 ORDER BY 1 LIMIT 1`,
      [nursery.nurseryId],
    );
    const plant = page.getByRole('combobox', { name: 'Plant, row 1' });
    await plant.fill(shared!.name);
    await plant.blur();
    await page
      .getByText(`“${shared!.name}” could mean ${shared!.plants} plants. Choose one by its scientific name.`)
      .waitFor();
    await plant.focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.locator('.pick-taxon').waitFor();
    await page.context().close();
  },
  JOURNEY_MS,
);

it(
  'a delivery of bought plants is booked as received, kept in quarantine, and tells the difference to the invoice',
  async () => {
    for (const size of [PHONE, DESK]) {
      const page = await journey.open('crew', size);
      await page.goto(`${journey.address}/stock/receive`);
      await page.getByRole('textbox', { name: 'Vendor', exact: false }).first().fill('Plug grower');
      await page.getByRole('textbox', { name: 'Pesticide statement' }).fill('no systemic insecticides');
      await page.getByRole('combobox', { name: 'Plant, line 1' }).fill('Asclepias incarnata');
      await page
        .getByRole('option', { name: /Asclepias incarnata/ })
        .first()
        .click();
      await page.getByRole('combobox', { name: 'Container, line 1' }).fill('plug');
      await page.getByRole('option', { name: /plug/ }).first().click();
      await page.getByRole('combobox', { name: 'Place, line 1' }).fill('Y1');
      await page.getByRole('option', { name: /Y1/ }).click();
      await page.getByRole('textbox', { name: 'On the invoice, line 1' }).fill('100');
      await page.getByRole('textbox', { name: 'Received, line 1' }).fill('96');
      await page.getByText('4 fewer than invoiced').waitFor();
      expect(await faultsOn(page)).toEqual([]);
      await page.getByRole('button', { name: 'Take in the delivery' }).click();
      await page.getByText('1 lot is taken in, 4 fewer than invoiced.').waitFor();
      await page.getByRole('link', { name: 'See all lots' }).click();
      await page
        .getByRole('row', { name: /Asclepias incarnata/ })
        .filter({ hasText: 'quarantine' })
        .first()
        .waitFor();
      await page.context().close();
    }
  },
  JOURNEY_MS,
);

it(
  'every view of the stock is free of faults of access, on a phone and at a desk',
  async () => {
    const placeId = randomUUID();
    await nursery.as().stock.addPlace(sent({ placeId, code: 'H1', kind: 'house', winterCover: true }));
    await nursery.as().stock.closePlace(sent({ placeId, untilAt: '2026-05-21T13:00:00Z', reason: 'soap spray' }));
    const [plant] = (await nursery.as().plants.listPlants({})).rows;
    const [container] = await nursery.as().plants.listContainers({});
    await nursery.as().stock.receiveOpening(
      sent({
        happenedOn: '2026-05-20',
        rows: [
          {
            lotId: randomUUID(),
            plantId: plant!.id,
            containerId: container!.id,
            placeId,
            units: 12,
            since: '2025-autumn',
            provenance: 'Crooked Hollow',
          },
        ],
      }),
    );
    const [source] = (await nursery.as().sources.listSources({ sort: 'units', descending: true })).rows;
    const yard = (await nursery.as().stock.listPlaces({})).find((row) => row.code === 'Y1')!;
    const addresses = [
      '/stock/lots',
      '/stock/lots?band=due&held=none',
      '/stock/places',
      `/stock/places/${yard.placeId}`,
      `/stock/places/${placeId}`,
      '/sources',
      `/sources/${source!.sourceId}`,
    ];
    for (const size of [PHONE, DESK]) {
      const page = await journey.open('grower', size);
      for (const address of addresses) {
        await page.goto(journey.address + address);
        await page.getByRole('heading', { level: 1 }).waitFor();
        await page.waitForLoadState('networkidle');
        expect({ address, violations: await faultsOn(page) }).toEqual({ address, violations: [] });
        expect({
          address,
          overflow: await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
        }).toEqual({ address, overflow: 0 });
      }
      await page.context().close();
    }
  },
  JOURNEY_MS,
);

it(
  'a place is added, closed and opened before its time by its page',
  async () => {
    const page = await journey.open('grower', PHONE);
    await page.goto(`${journey.address}/stock/places`);
    await page.getByRole('button', { name: 'Add a place' }).click();
    await page.getByRole('textbox', { name: 'Code' }).fill('CF1');
    await page.getByLabel('Kind').selectOption({ label: 'cold frame' });
    await page.getByRole('button', { name: 'Save the place' }).click();
    await page.getByRole('link', { name: 'CF1' }).click();
    await page.getByRole('button', { name: 'Close it' }).click();
    await page.getByRole('textbox', { name: 'Reason' }).fill('re-entry time');
    expect(await faultsOn(page)).toEqual([]);
    await page.getByRole('dialog').getByRole('button', { name: 'Close it' }).click();
    // Six in the evening of the nursery, in Chicago, wherever the phone is.
    await page.getByText(/CF1 is closed until May 20, 2026, 6:00 PM: re-entry time\./).waitFor();
    await page.getByRole('button', { name: 'More' }).last().click();
    await page.getByRole('menuitem', { name: 'Open it now' }).click();
    await page.getByRole('textbox', { name: 'Reason' }).fill('label says four hours');
    await page.getByRole('dialog').getByRole('button', { name: 'Open it now' }).click();
    await page.getByText('CF1 is open.').waitFor();
    await page.getByText('label says four hours').waitFor();
    await page.context().close();
  },
  JOURNEY_MS,
);
