// Tasks ticked off on a phone in the field, and a calendar address made, read and ended.
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { taskStory } from '../integration/tasks/story.ts';
import { violationsOn } from '../support/browser/axe.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { DESK, type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: Awaited<ReturnType<typeof taskStory>>;
let journey: Journey;
let code: string;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database, { day: '2026-11-20' });
  story = await taskStory(nursery);
  const yardId = await story.stock.addPlace({ code: 'Y1', kind: 'yard' });
  await story.setDays(yardId, { cover: '11-18', bait: '11-21' });
  ({ code } = await story.start({ on: '2026-10-21' }));
  await story.start({ on: '2026-11-12', stagePosition: 2 });
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

const box = (page: Page, title: string) => page.getByRole('button', { name: `Done: ${title}`, exact: true });
const groups = async (page: Page) =>
  (await page.getByRole('heading', { level: 2 }).allTextContents()).map((title) => title.trim());

it('a task is ticked off with one tap, and taken back with another', async () => {
  const page = await journey.open('crew', PHONE);
  await page.goto(`${journey.address}/tasks`);
  await box(page, 'Cover Y1 for winter').waitFor();
  expect(await groups(page)).toEqual(['Overdue', 'November 20, 2026, today', 'November 21, 2026, tomorrow']);
  expect(await violationsOn(page)).toEqual([]);
  const target = await box(page, 'Cover Y1 for winter').boundingBox();
  expect(Math.min(target?.width ?? 0, target?.height ?? 0)).toBeGreaterThanOrEqual(48);
  await box(page, 'Cover Y1 for winter').tap();
  await page.getByText('Done: Cover Y1 for winter.').waitFor();
  await page.getByRole('heading', { name: 'Done', exact: true }).waitFor();
  expect((await nursery.sql('SELECT task_key, done_on::text FROM task_tick WHERE taken_back_at IS NULL')).length).toBe(
    1,
  );
  await page.getByRole('button', { name: 'Undo' }).tap();
  await page.getByText('Open again: Cover Y1 for winter.').waitFor();
  await box(page, 'Cover Y1 for winter').waitFor();
  await page.context().close();
});

it('what a stage ends is ticked by beginning the next one', async () => {
  const page = await journey.open('crew', PHONE);
  await page.goto(`${journey.address}/tasks?kind=take-out-of-cold`);
  await box(page, `Take ${code} out of the cold and sow it`).tap();
  await page.getByText('No task matches').waitFor();
  expect(await story.told('take-out-of-cold')).toEqual([]);
  expect(await story.told('count')).toContain('count 2026-11-27');
  await page.getByRole('button', { name: 'Undo' }).tap();
  await box(page, `Take ${code} out of the cold and sow it`).waitFor();
  await page.context().close();
});

it('poison is cautioned about before it is ticked, for the day on which it was laid', async () => {
  const page = await journey.open('crew', PHONE);
  await page.goto(`${journey.address}/tasks`);
  await page.getByRole('button', { name: 'Bait against voles at Y1', exact: true }).tap();
  await page.getByText(/the label is the law/).waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await page.getByLabel('Done on').fill('2026-11-19');
  await page.getByRole('button', { name: 'It is done' }).tap();
  await page.getByText('Done: Bait against voles at Y1.').waitFor();
  expect(await nursery.sql('SELECT done_on::text AS "doneOn" FROM task_tick WHERE taken_back_at IS NULL')).toEqual([
    { doneOn: '2026-11-19' },
  ]);
  await page.context().close();
});

it('a count leads to its sheet, and goes from today’s page once it is booked', async () => {
  const page = await journey.open('crew', PHONE);
  await page.goto(journey.address);
  const counting = page.getByRole('link', { name: /^Count what has come up of/ });
  await counting.tap();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('textbox', { name: 'Cells with plants' }).fill('12');
  await dialog.getByRole('button', { name: 'Save the count', exact: true }).tap();
  await dialog.waitFor({ state: 'detached' });
  await page.goto(journey.address);
  await page.getByRole('heading', { name: 'To do' }).waitFor();
  await counting.waitFor({ state: 'detached' });
  expect(await violationsOn(page)).toEqual([]);
  await page.context().close();
});

it('a place and a kind narrow the list, and an empty one says how to widen it', async () => {
  const page = await journey.open('viewer', DESK);
  await page.goto(`${journey.address}/tasks?ahead=400`);
  await page.getByText('Cover Y1 for winter').first().waitFor();
  await page.getByLabel('Place').selectOption({ label: 'Y1' });
  await page.getByRole('heading', { name: 'B2' }).first().waitFor({ state: 'detached' });
  await page.getByLabel('What').selectOption('vole-bait');
  await page.getByText('Cover Y1 for winter').first().waitFor({ state: 'detached' });
  expect(await page.getByRole('button', { name: /^Done:/ }).count()).toBe(0);
  expect(await violationsOn(page)).toEqual([]);
  await page.getByLabel('How far ahead').selectOption('0');
  await page.getByText('No task matches').waitFor();
  await page.context().close();
});

it('a calendar address is made, shown once, works without a session, and is ended', async () => {
  const page = await journey.open('crew', PHONE);
  await page.goto(`${journey.address}/settings/own`);
  await page.getByRole('button', { name: 'Make an address' }).tap();
  const address = await page.getByLabel('Address', { exact: true }).inputValue();
  expect(address).toMatch(new RegExp(`^${journey.address}/calendar/[\\w-]{43}\\.ics$`));
  const ask = () => fetch(address);
  expect(await (await ask()).text()).toContain('BEGIN:VCALENDAR');
  expect(await violationsOn(page)).toEqual([]);
  await page.reload();
  await page.getByText(/^Your address works since/).waitFor();
  expect(await page.getByLabel('Address', { exact: true }).count()).toBe(0);
  await page.getByRole('button', { name: 'End the address' }).tap();
  await page.getByText('You have no address yet.').waitFor();
  expect((await ask()).status).toBe(404);
  await page.context().close();
});
