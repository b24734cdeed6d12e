// Choosing from a list that answers slowly: whatever comes first, what is chosen is what was pressed, and the list is closed for good.
import { randomUUID } from 'node:crypto';
import type { Locator, Page, Route } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { violationsOn } from '../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { DESK, type Journey, openJourney } from '../support/browser/journey.ts';
import { openNursery, sent, type TestNursery } from '../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;
let page: Page;

/** Stands most in the nursery, so that it heads the list before anything is typed. */
const COMMON = 'Asclepias syriaca';
const WANTED = 'Asclepias incarnata';

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  await nursery.as('owner').plants.loadReference(sent({}));
  await nursery.as().stock.addPlace(sent({ placeId: randomUUID(), code: 'B1', kind: 'bench' }));
  await stockUp(COMMON, 400);
  await stockUp(WANTED, 100);
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

async function stockUp(name: string, units: number): Promise<void> {
  const { rows } = await nursery.as().plants.listPlants({ perPage: 200 });
  const plantId = rows.find((plant) => plant.scientificName === name)!.id;
  const [container] = await nursery.as().plants.listContainers({});
  const [place] = await nursery.as().stock.listPlaces({});
  await nursery.as().stock.receiveOpening(
    sent({
      happenedOn: '2026-05-20',
      rows: [
        {
          lotId: randomUUID(),
          plantId,
          containerId: container!.id,
          placeId: place!.placeId,
          units,
          rootChecked: true,
        },
      ],
    }),
  );
}

async function lotOf(name: string): Promise<string> {
  const { rows } = await nursery.as().stock.listLots({ text: name });
  return rows[0]!.lotId;
}

/** Keeps back the server's answers to what is asked about one text, until they are let through. */
async function holdBack(text: string) {
  const held: Route[] = [];
  let isOpen = false;
  const asks = (url: URL) =>
    url.pathname.includes('plants.findPlant') &&
    (url.searchParams.get('input') ?? '').includes(`"text":${JSON.stringify(text)}`);
  await page.route(asks, async (route) => {
    if (isOpen) await route.continue();
    else held.push(route);
  });
  return {
    isAsked: () => expect.poll(() => held.length).toBeGreaterThan(0),
    letThrough: async () => {
      isOpen = true;
      const answers = held.splice(0).map(async (route) => {
        const answered = page.waitForResponse((response) => response.request() === route.request());
        await route.continue();
        await (await answered).finished();
      });
      await Promise.all(answers);
    },
  };
}

const field = (name: string) => page.getByRole('combobox', { name, includeHidden: true });
const option = (name: string) => page.getByRole('option', { name: new RegExp(`^${name} `) });

async function pressOn(target: Locator): Promise<void> {
  const box = (await target.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
}

/** All that came so far is on the screen. */
const drawn = () =>
  page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));

/** Closed for good: the fields beside it are there for everyone again, and still are when all that came has been drawn. */
async function expectChosen(plant: string): Promise<void> {
  await page.getByRole('combobox', { name: 'Container, line 1' }).waitFor();
  await drawn();
  expect({ plant: await field('Plant, line 1').inputValue(), lists: await page.getByRole('listbox').count() }).toEqual({
    plant,
    lists: 0,
  });
}

beforeEach(async () => {
  page = await journey.open('crew', DESK);
  await page.goto(`${journey.address}/stock/receive`);
  await field('Plant, line 1').waitFor();
});
afterEach(() => page.context().close());

describe('an option is chosen once', () => {
  it('when the answer was there before it was pressed', async () => {
    await field('Plant, line 1').fill(WANTED);
    await option(WANTED).click();
    await expectChosen(WANTED);
  });

  it('when it is clicked as soon as it shows, while the answer to what was typed is still on its way', async () => {
    const find = await holdBack(WANTED);
    await field('Plant, line 1').focus();
    await option(WANTED).waitFor();
    await page.keyboard.insertText(WANTED);
    const clicked = option(WANTED).click();
    await find.isAsked();
    await find.letThrough();
    await clicked;
    await expectChosen(WANTED);
  });

  it('when the answer to what was typed before comes last', async () => {
    const find = await holdBack('Asclepias');
    await field('Plant, line 1').fill('Asclepias');
    await find.isAsked();
    await field('Plant, line 1').fill(WANTED);
    await option(WANTED).click();
    await find.letThrough();
    await expectChosen(WANTED);
  });

  it('when the list was read again while the finger was down', async () => {
    await field('Plant, line 1').focus();
    await option(COMMON).waitFor();
    await pressOn(option(WANTED));
    const readAgain = page.waitForResponse((response) => response.url().includes('plants.listPlants'));
    // Now it stands most itself and heads the list, so that another comes to lie where the finger is.
    await stockUp(WANTED, 500);
    await nursery
      .as()
      .plants.addPlant(sent({ plantId: randomUUID(), scientificName: 'Asclepias proba', rootHabit: 'fibrous' }));
    await (await readAgain).finished();
    await page.mouse.up();
    await expectChosen(WANTED);
  });
});

describe('nothing is chosen from a list that belongs to an older text', () => {
  it.each([
    ['before the finger is lifted', true],
    ['after the finger is lifted', false],
  ])('when the answer comes %s', async (_, isDown) => {
    const find = await holdBack('Asclepias inc');
    await field('Plant, line 1').focus();
    await option(COMMON).waitFor();
    await page.keyboard.insertText('Asclepias inc');
    await find.isAsked();
    await pressOn(option(COMMON));
    if (!isDown) await page.mouse.up();
    await find.letThrough();
    if (isDown) await page.mouse.up();
    await option(COMMON).waitFor({ state: 'detached' });
    expect(await field('Plant, line 1').inputValue()).toBe('Asclepias inc');
    await option(WANTED).click();
    await expectChosen(WANTED);
  });
});

describe('by the keyboard', () => {
  it('Enter waits for what can be marked, and sends no form', async () => {
    const find = await holdBack(WANTED);
    await field('Plant, line 1').fill(WANTED);
    await find.isAsked();
    await page.keyboard.press('Enter');
    expect({
      text: await field('Plant, line 1').inputValue(),
      lists: await page.getByRole('listbox').count(),
      faults: await page.locator('.field-error').count(),
    }).toEqual({ text: WANTED, lists: 1, faults: 0 });
    await find.letThrough();
    await page.locator('[role=option]:not([aria-disabled])').first().waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expectChosen(WANTED);
  });

  it('Escape closes the list and takes back what was typed', async () => {
    await field('Plant, line 1').fill(WANTED);
    await option(WANTED).click();
    await field('Plant, line 1').fill('Asclepias');
    await option(COMMON).waitFor();
    await page.keyboard.press('Escape');
    await expectChosen(WANTED);
  });

  it('an emptied field is empty when it is left, though the list still offers what it held', async () => {
    await field('Plant, line 1').fill(WANTED);
    await option(WANTED).click();
    await field('Plant, line 1').fill('');
    await option(WANTED).waitFor();
    await page.keyboard.press('Tab');
    await expectChosen('');
  });
});

/** How far the list lies from its field: below it, or above it where there is no room below. */
async function gapTo(name: string): Promise<number> {
  const [line, list] = [await field(name).boundingBox(), await page.locator('.popover').boundingBox()];
  return Math.round(Math.min(Math.abs(list!.y - line!.y - line!.height), Math.abs(line!.y - list!.y - list!.height)));
}

/** Scrolls what the field lies in, be it the page or a sheet, and tells by how much it moved. */
const scrollAround = (name: string, by: number) =>
  field(name).evaluate((input, step) => {
    let around: Element = input;
    while (
      around !== document.scrollingElement &&
      !(around.scrollHeight > around.clientHeight && getComputedStyle(around).overflowY === 'auto')
    )
      around = around.parentElement!;
    const before = input.getBoundingClientRect().top;
    around.scrollBy({ top: step, behavior: 'instant' });
    return before - input.getBoundingClientRect().top;
  }, by);

describe('an open list stays at its field when it moves', () => {
  it('on a page that scrolls', async () => {
    await field('Plant, line 1').focus();
    await option(COMMON).waitFor();
    expect(await scrollAround('Plant, line 1', 40)).not.toBe(0);
    await expect.poll(() => gapTo('Plant, line 1')).toBeLessThan(8);
    await option(COMMON).click();
    await expectChosen(COMMON);
  });

  it('on a page where something appears above it', async () => {
    await field('Plant, line 1').focus();
    await option(COMMON).waitFor();
    const moved = await field('Plant, line 1').evaluate((input) => {
      // Some browsers scroll by as much as was put in, which is told as scrolling is; others move the field without a word.
      document.documentElement.style.overflowAnchor = 'none';
      const before = input.getBoundingClientRect().top;
      const above = Object.assign(document.createElement('p'), { textContent: 'New' });
      above.style.blockSize = '40px';
      input.closest('form')!.prepend(above);
      return input.getBoundingClientRect().top - before;
    });
    expect(Math.abs(moved)).toBeGreaterThan(8);
    await expect.poll(() => gapTo('Plant, line 1')).toBeLessThan(8);
  });

  it('and goes to its other side, where there is more room, unless a pointer came onto it', async () => {
    const side = () => page.locator('.popover').getAttribute('data-placement');
    await field('Plant, line 1').fill(WANTED);
    await page.locator('[role=option]').nth(1).waitFor({ state: 'detached' });
    expect(await side()).toBe('top');
    await pressOn(option(WANTED));
    expect(await scrollAround('Plant, line 1', 300)).toBe(300);
    await drawn();
    expect({ side: await side(), gap: await gapTo('Plant, line 1') }).toEqual({ side: 'top', gap: 4 });
    await page.mouse.up();
    await page.keyboard.press('Escape');
    await field('Plant, line 1').fill(WANTED);
    await page.locator('.popover').waitFor();
    expect(await side()).toBe('bottom');
  });

  it('in a sheet that scrolls', async () => {
    await page.goto(`${journey.address}/stock/lots/${await lotOf(COMMON)}`);
    await page.setViewportSize({ width: 360, height: 400 });
    await page.getByRole('button', { name: 'Pot up', exact: true }).click();
    await field('Container').focus();
    await page.getByRole('option', { name: /^tall/ }).first().waitFor();
    expect(await scrollAround('Container', 40)).not.toBe(0);
    await expect.poll(() => gapTo('Container')).toBeLessThan(8);
  });
});

it('a list that waits for its answer has no fault of access', async () => {
  const find = await holdBack(WANTED);
  await field('Plant, line 1').focus();
  await option(COMMON).waitFor();
  await page.keyboard.insertText(WANTED);
  await find.isAsked();
  expect(await violationsOn(page, '[role=listbox]')).toEqual([]);
  await find.letThrough();
});
