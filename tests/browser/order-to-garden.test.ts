import { randomUUID } from 'node:crypto';
import type { Role } from '@rootclock/domain';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { violationsOn } from '../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { gardenStory, type GardenStory } from '../support/gardens.ts';
import { DESK, type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let journey: Journey;

beforeEach(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  await nursery.sql(
    `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'scientific', 'Asclepias tuberosa', 'asclepias tuberosa')`,
    [nursery.nurseryId, randomUUID(), story.plantId],
  );
  journey = await openJourney(database, nursery, { keepsShell: true });
  return async () => {
    await journey.close();
    await nursery.close();
    await database.drop();
  };
});

/** A whole journey with its looks by axe takes longer than a test of one thing. */
const JOURNEY_MS = 180_000;

/** A page without transitions, so that axe never judges a colour that is half way to another. */
async function open(role: Role, size: typeof PHONE): Promise<Page> {
  const page = await journey.open(role, size);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  return page;
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });
const said = (page: Page, text: string | RegExp) => page.getByText(text).first().waitFor();

async function choose(page: Page, label: string, typed: string, option: RegExp): Promise<void> {
  await page.getByRole('combobox', { name: label }).fill(typed);
  await page.getByRole('option', { name: option }).click();
}

/** A client and a site that are new, and a line of twenty, all typed on the one page of the new order. */
async function order(page: Page): Promise<void> {
  await page.goto(`${journey.address}/gardens`);
  await page.getByRole('link', { name: 'New order' }).first().click();
  await button(page, 'New client').click();
  await page.getByRole('textbox', { name: 'Name' }).fill('Perrin Oxbow');
  await button(page, 'Save').click();
  await button(page, 'New site').click();
  await page.getByRole('textbox', { name: 'Name of the site' }).fill('Kitchen slope');
  await button(page, 'Save').click();
  await page.getByLabel('Day').fill('2026-06-01');
  await choose(page, 'Plant', 'asclepias', /Asclepias tuberosa/);
  await choose(page, 'Container', 'tall', /tall-1l/);
  await said(page, 'Up to 42 can be promised for June 1, 2026.');
  await page.getByRole('textbox', { name: 'Plants' }).fill('20');
  expect(await violationsOn(page)).toEqual([]);
  await button(page, 'Save the order').click();
  await page.getByRole('heading', { level: 1, name: /^G-26-\d{3}, Perrin Oxbow$/ }).waitFor();
}

async function pull(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Pull list' }).click();
  await button(page, 'Issue the list').click();
  await said(page, 'The list is issued');
  await button(page, 'Issue it again').waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await button(page, /^Pull 12 of /).click();
  await said(page, /12 plants pulled for G-26-/);
  await button(page, /^Pull 8 of /).click();
  await said(page, /Nobody has looked at the root balls of L-/);
  await button(page, 'I looked: pull them').click();
  await said(page, 'Everything reserved is pulled');
}

async function plant(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Plant', exact: true }).click();
  await button(page, 'Plant 20').waitFor();
  // Three of the first lot stay in their pots, and two more than was pulled stood there all along.
  await page.getByText('of 12 pulled').locator('..').getByRole('textbox').fill('9');
  await button(page, 'Add plants').click();
  await page.getByLabel('Lot', { exact: true }).selectOption({ index: 1 });
  await page.getByLabel('Taken from').selectOption({ label: 'Found: the books did not know them' });
  await page.getByRole('textbox', { name: 'Plants', exact: true }).fill('2');
  expect(await violationsOn(page)).toEqual([]);
  await button(page, 'Plant 19').click();
  await said(page, /19 plants planted for G-26-/);
}

async function bringBack(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Bring back' }).click();
  await said(page, 'of 3 pulled');
  await page.getByRole('textbox', { name: /^Unopened, back: / }).fill('2');
  await page.getByRole('textbox', { name: /^Lost: / }).fill('1');
  await button(page, 'Bring 2 back, book 1 as lost').click();
  // Whoever forgets the cause is told so beside it.
  await page.getByRole('link', { name: /Why they are lost: Say why these plants are lost/ }).waitFor();
  await page.getByLabel('Why they are lost').selectOption({ label: 'damaged in handling' });
  expect(await violationsOn(page)).toEqual([]);
  await button(page, 'Bring 2 back, book 1 as lost').click();
  await said(page, '2 plants brought back, 1 plant lost');
}

describe.each([
  ['a phone', PHONE],
  ['a desk', DESK],
] as const)('on %s', (_device, size) => {
  it(
    'an order goes from its first word to a planted garden',
    async () => {
      await story.addLot({ units: 12, plantByOn: '2026-06-10' });
      await story.addLot({ units: 30, plantByOn: '2026-09-01', rootCheckedOn: null, readyOn: '2026-04-14' });
      const page = await open('owner', size);
      await order(page);
      await said(page, '12 reserved');
      await said(page, '8 reserved');
      await said(page, 'root ball not checked');
      expect(await violationsOn(page)).toEqual([]);
      await pull(page);
      await plant(page);
      await bringBack(page);

      await page
        .getByRole('link', { name: /^G-26-\d{3}$/ })
        .first()
        .click();
      await said(page, '19 planted');
      await said(page, '1 reserved');
      await page.getByRole('link', { name: 'Kitchen slope' }).click();
      await page.getByRole('heading', { level: 1, name: 'Kitchen slope' }).waitFor();
      expect(await violationsOn(page)).toEqual([]);
      const [site] = (await nursery.as('viewer').gardens.listClients({ search: 'Perrin' })).rows;
      const client = await nursery.as('viewer').gardens.readClient({ clientId: site?.id ?? '' });
      expect(client.orders).toMatchObject([
        { wantedUnits: 20, deliveredUnits: 19, stagedUnits: 0, reservedUnits: 1, shortUnits: 0 },
      ]);
      expect(
        await nursery.sql('SELECT sum(units)::int AS units FROM account WHERE place_id = $1', [story.quarantineId]),
      ).toEqual([{ units: 2 }]);
    },
    JOURNEY_MS,
  );
});

describe('what was done to an order', () => {
  it('can be undone from the notice that says it', async () => {
    const lotId = await story.addLot({ units: 12 });
    const { orderId } = await story.order([{ units: 10 }]);
    const page = await open('grower', PHONE);
    await page.goto(`${journey.address}/gardens/orders/${orderId}/pull`);
    await button(page, /^Pull 10 of /).click();
    await said(page, /10 plants pulled/);
    expect(await story.unitsOf(lotId)).toBe(2);
    await button(page, 'Undo').click();
    await said(page, 'Taken back.');
    expect(await story.unitsOf(lotId)).toBe(12);

    await page.goto(`${journey.address}/gardens/orders/${orderId}`);
    await button(page, 'More').first().click();
    await page.getByRole('menuitem', { name: 'Cancel the order' }).click();
    await button(page, 'Cancel the order').click();
    await said(page, 'This order was cancelled.');
    await button(page, 'Undo').click();
    await button(page, 'Add a line').first().waitFor();
    expect(await story.read(orderId)).toMatchObject({ state: 'open', reservedUnits: 10 });
  });
});

describe('moving an order to another day', () => {
  it('shows in numbers what becomes short, and asks once more before it is done', async () => {
    await story.addLot({ units: 30, plantByOn: '2026-06-10' });
    await story.addLot({ units: 12, plantByOn: '2026-09-01' });
    const { orderId } = await story.order([{ units: 20 }]);
    const page = await open('grower', PHONE);
    await page.goto(`${journey.address}/gardens/orders/${orderId}`);
    await button(page, 'More').first().click();
    await page.getByRole('menuitem', { name: 'Move to another day' }).click();
    await page.getByLabel('New day').fill('2026-06-15');
    await said(page, /20 of 20 now, then 12\./);
    await said(page, /^Gives up 20 of L-.*: they are past the plant-by day by then\.$/);
    await said(page, 'The order keeps its turn.');
    await said(page, 'Nobody else is affected.');
    expect(await violationsOn(page)).toEqual([]);
    await button(page, 'Move to June 15, 2026').click();
    await said(page, /has 20 now, then 12: 8 fewer\./);
    expect((await story.read(orderId)).dueOn).toBe('2026-06-01');
    await button(page, 'Do it all the same').click();
    await said(page, '8 plants short');
    expect(await story.read(orderId)).toMatchObject({ dueOn: '2026-06-15', reservedUnits: 12, shortUnits: 8 });
  });
});

describe('plants that serve a line', () => {
  it('can be tied to it, untied and given up', async () => {
    const lotId = await story.addLot({ units: 12 });
    const { orderId, lineId } = await story.order([{ units: 10 }]);
    const page = await open('grower', DESK);
    await page.goto(`${journey.address}/gardens/orders/${orderId}`);
    const act = async (name: string) => {
      await button(page, /^More for L-/).click();
      await page.getByRole('menuitem', { name }).click();
    };
    await act('Tie to this line');
    await page.getByText('tied', { exact: true }).waitFor();
    expect(await story.heldBy(lineId)).toEqual({ [`${lotId}*`]: 10 });
    await act('Untie');
    await page.getByText('tied', { exact: true }).waitFor({ state: 'detached' });
    await act('Give up');
    await said(page, '10 plants short');
    await said(page, /given up for this line by hand/);
    expect(await story.heldBy(lineId)).toEqual({});
    await button(page, 'Choose lots').click();
    await button(page, 'Tie to this line').click();
    await said(page, /10 plants of L-.* are tied to the line/);
    expect(await story.heldBy(lineId)).toEqual({ [`${lotId}*`]: 10 });
  });
});

describe('a viewer', () => {
  it('sees orders and pull lists and is offered nothing to do', async () => {
    await story.addLot({ units: 12 });
    const { orderId } = await story.order([{ units: 10 }]);
    const page = await open('viewer', PHONE);
    await page.goto(`${journey.address}/gardens/orders/${orderId}/pull`);
    await said(page, 'Asclepias tuberosa');
    expect(await button(page, /^Pull /).count()).toBe(0);
    await page.goto(`${journey.address}/gardens/orders/${orderId}`);
    await said(page, '10 reserved');
    expect(await button(page, /^(More|Add a line|Choose lots)/).count()).toBe(0);
  });
});

const spanish = async (page: Page) => page.addInitScript(() => localStorage.setItem('rootclock.language', 'es'));

describe('the pull list', () => {
  it('speaks Spanish to a crew that works in Spanish', async () => {
    await story.addLot({ units: 12 });
    const { orderId } = await story.order([{ units: 10 }]);
    const page = await open('crew', PHONE);
    await spanish(page);
    await page.goto(`${journey.address}/gardens/orders/${orderId}/pull`);
    await button(page, /^Sacar 10 de /).click();
    await said(page, /10 plantas sacadas para G-26-/);
    await nursery
      .as('crew')
      .gardens.readPullList({ orderId })
      .then(({ staged }) => expect(staged).toMatchObject([{ units: 10 }]));
  });
});
