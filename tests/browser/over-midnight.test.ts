// A page that is left open over the nursery's midnight, on a device whose clock and zone are wrong: its next entry carries the new day.
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { gardenStory, type GardenStory } from '../support/gardens.ts';
import { DESK, type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../support/nursery.ts';

const MINUTE = 60_000;
/** Two minutes to midnight in Chicago. */
const LATE = '2026-05-21T04:58:00Z';
/** The device takes itself to be in Tokyo, and is nine hours off there too. */
const OFF_BY = 9 * 60 * MINUTE;
const DEVICE_ZONE = 'Asia/Tokyo';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
let journey: Journey;
let lotId: string;

beforeEach(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  lotId = await story.addLot();
  nursery.clock.set(LATE);
  journey = await openJourney(database, nursery);
  return async () => {
    await journey.close();
    await nursery.close();
    await database.drop();
  };
});

async function openLate(size: typeof PHONE, offBy = OFF_BY): Promise<Page> {
  const page = await journey.open('grower', size);
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Emulation.setTimezoneOverride', { timezoneId: DEVICE_ZONE });
  await page.clock.install({ time: Date.parse(LATE) + offBy });
  return page;
}

/** Five minutes pass for the server and on the device, whose alarms ring meanwhile. */
async function passMidnight(page: Page): Promise<void> {
  nursery.clock.set('2026-05-21T05:03:00Z');
  await page.clock.fastForward(5 * MINUTE);
}

const dayField = (page: Page) => page.locator('input[name=happenedOn]');
const dayShown = (page: Page) => dayField(page).inputValue();
const untilDay = (page: Page, day: string) => expect.poll(() => dayShown(page)).toBe(day);
const lossDays = async () =>
  (
    await nursery.sql<{ on: string }>(`SELECT happened_on::text AS on FROM entry WHERE kind = 'lose' ORDER BY version`)
  ).map(({ on }) => on);

async function openLoss(page: Page): Promise<void> {
  await page.goto(`${journey.address}/stock/lots/${lotId}`);
  await page.getByRole('button', { name: 'Lost', exact: true }).click();
  await page.getByRole('textbox', { name: 'How many' }).fill('1');
  await page.getByLabel('Why').selectOption({ label: 'drought' });
}

async function writeOff(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Write off', exact: true }).click();
  // The sheet closes once the server has answered.
  await page.getByRole('dialog').waitFor({ state: 'detached' });
}

describe('a page that was left open', () => {
  it.each([
    ['nine hours ahead', OFF_BY],
    ['nine hours behind', -OFF_BY],
  ])('writes with the new day although its device is %s', async (_, offBy) => {
    const page = await openLate(PHONE, offBy);
    await openLoss(page);
    expect(await dayShown(page)).toBe('2026-05-20');
    await passMidnight(page);
    await untilDay(page, '2026-05-21');
    await writeOff(page);
    expect(await lossDays()).toEqual(['2026-05-21']);
  });

  it('keeps the day that somebody chose for this entry, and forgets it for the next', async () => {
    const page = await openLate(PHONE);
    await openLoss(page);
    await dayField(page).fill('2026-05-18');
    await passMidnight(page);
    expect(await dayShown(page)).toBe('2026-05-18');
    await writeOff(page);
    expect(await lossDays()).toEqual(['2026-05-18']);
    // Chosen today, so it stays for a while; the night after ends it.
    await openLoss(page);
    expect(await dayShown(page)).toBe('2026-05-18');
    nursery.clock.set('2026-05-22T14:00:00Z');
    await page.clock.fastForward(33 * 60 * MINUTE);
    await untilDay(page, '2026-05-22');
  });

  it('tells the new day when somebody looks at a phone that slept, before anything is asked', async () => {
    const page = await openLate(PHONE);
    await openLoss(page);
    nursery.clock.set('2026-05-22T14:00:00Z');
    await page.context().setOffline(true);
    // The time moves and no alarm rings, as in a pocket.
    await page.clock.setSystemTime(Date.parse('2026-05-22T14:00:00Z') + OFF_BY);
    expect(await dayShown(page)).toBe('2026-05-20');
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    await untilDay(page, '2026-05-22');
  });

  it('reads again what was true yesterday', async () => {
    const page = await openLate(DESK);
    await page.goto(journey.address);
    await page.getByRole('heading', { level: 1, name: /May 20/ }).waitFor();
    await page.waitForLoadState('networkidle');
    const asked: string[] = [];
    page.on('request', (request) => void (request.url().includes('/trpc/') && asked.push(request.url())));
    await passMidnight(page);
    await page.getByRole('heading', { level: 1, name: /May 21/ }).waitFor();
    await expect.poll(() => asked.some((url) => url.includes('listTasks') && url.includes('2026-05-21'))).toBe(true);
    await expect.poll(() => asked.some((url) => url.includes('people.me'))).toBe(true);
  });
});

describe('the day kept on a list of work', () => {
  it('is over with the day on which it was kept', async () => {
    const { orderId } = await story.order([{ units: 6 }]);
    const page = await openLate(PHONE);
    const open = () => page.goto(`${journey.address}/gardens/orders/${orderId}/pull`);
    await open();
    await dayField(page).fill('2026-05-18');
    await open();
    expect(await dayShown(page)).toBe('2026-05-18');
    await passMidnight(page);
    await untilDay(page, '2026-05-21');
    await open();
    expect(await dayShown(page)).toBe('2026-05-21');
  });
});
