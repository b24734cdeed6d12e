// Two people share a browser: two tabs, one cookie, one outbox. Nothing that one of them entered is written in the other's name, and nothing that
// was read for one is shown to the other.
import type { BrowserContext, Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { DESK, type Journey, openJourney } from '../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../support/nursery.ts';
import { sessionOf } from '../support/session.ts';
import { stockOf } from '../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;
let lotId: string;

beforeEach(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  ({ lotId } = await stockOf(nursery).addReadyLot());
  journey = await openJourney(database, nursery);
  return async () => {
    await journey.close();
    await nursery.close();
    await database.drop();
  };
});

/** The cookie is somebody else's from now on, and no tab was told. */
async function handOver(browser: BrowserContext, role: 'grower' | 'crew'): Promise<void> {
  const [cookie] = await browser.cookies();
  if (!cookie) throw new Error('nobody is signed in');
  await browser.addCookies([{ ...cookie, value: await sessionOf(nursery, role) }]);
}

const isOf = (page: Page, role: string) => page.getByText(`Test ${role}`).first().waitFor();
const losses = async () =>
  nursery.sql<{ person: string; units: number }>(
    `SELECT entry.person_id::text AS person, movement.from_units AS units FROM entry JOIN movement USING (nursery_id) WHERE movement.entry_id = entry.id AND entry.kind = 'lose'`,
  );

/** Three plants are written off on a line that does not carry them: they wait. */
async function enterInVain(page: Page): Promise<() => Promise<void>> {
  await page.route('**/trpc/stock.loseFromLot', (route) => route.abort());
  await page.goto(`${journey.address}/stock/lots/${lotId}`);
  await page.getByRole('button', { name: 'Lost', exact: true }).click();
  await page.getByRole('textbox', { name: 'How many' }).fill('3');
  await page.getByLabel('Why').selectOption({ label: 'drought' });
  await page.getByRole('button', { name: 'Write off', exact: true }).click();
  await page.getByText('1 entry waits to be sent').first().waitFor();
  return async () => {
    await page.unroute('**/trpc/stock.loseFromLot');
    await page.evaluate(() => window.dispatchEvent(new Event('online')));
  };
}

describe('an entry that waits', () => {
  it('stays with its person while another is signed in, and goes out once in their own name', async () => {
    const ann = await journey.open('grower', DESK);
    const lineIsBack = await enterInVain(ann);
    await handOver(ann.context(), 'crew');
    await lineIsBack();
    // The server says whose session it is, and the tab becomes theirs.
    await isOf(ann, 'crew');
    expect(await losses()).toEqual([]);
    await ann.goto(`${journey.address}/outbox`);
    await ann.getByText('1 entry of somebody else waits for their sign-in.').waitFor();
    await handOver(ann.context(), 'grower');
    const again = await ann.context().newPage();
    await again.goto(journey.address);
    await expect.poll(losses).toEqual([{ person: nursery.people.grower.personId, units: 3 }]);
    // The first tab was told by the second, and is hers again.
    await isOf(ann, 'grower');
    await again.getByText('Everything is sent').first().waitFor();
    expect(await losses()).toHaveLength(1);
  });
});

describe('what was read', () => {
  it('for one person is not shown to the next, who is noticed at the first answer', async () => {
    const tab = await journey.open('grower', DESK);
    await tab.goto(journey.address);
    await isOf(tab, 'grower');
    await handOver(tab.context(), 'crew');
    await tab.getByRole('link', { name: 'Stock' }).first().click();
    await isOf(tab, 'crew');
    expect(await tab.getByText('Test grower').count()).toBe(0);
  });

  it('goes from every tab when somebody else signs in, or signs out, in one of them', async () => {
    const first = await journey.open('grower', DESK);
    await first.goto(journey.address);
    await isOf(first, 'grower');
    await handOver(first.context(), 'crew');
    const second = await first.context().newPage();
    await second.goto(journey.address);
    await isOf(second, 'crew');
    await isOf(first, 'crew');
    expect(await first.getByText('Test grower').count()).toBe(0);
    await second.getByRole('button', { name: 'Sign out' }).click();
    for (const tab of [second, first]) await tab.getByRole('button', { name: 'Sign in', exact: true }).waitFor();
    expect(await first.getByText('Test crew').count()).toBe(0);
  });

  it('leaves nothing filled in that somebody else typed last', async () => {
    const tab = await journey.open('grower', DESK);
    const remembered = () =>
      tab.evaluate(() => Object.keys(sessionStorage).filter((key) => key.startsWith('rootclock.last.')));
    await tab.goto(journey.address);
    await isOf(tab, 'grower');
    await tab.evaluate(() =>
      sessionStorage.setItem('rootclock.last.lots.treat.applicator', JSON.stringify('Test grower')),
    );
    await tab.reload();
    await isOf(tab, 'grower');
    expect(await remembered()).toEqual(['rootclock.last.lots.treat.applicator']);
    await handOver(tab.context(), 'crew');
    await tab.reload();
    await isOf(tab, 'crew');
    expect(await remembered()).toEqual([]);
  });
});
