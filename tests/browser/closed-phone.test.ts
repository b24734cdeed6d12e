// A phone that is closed, and opened where there is no signal: it opens, says how old its pages are, takes entries and brings them home once each.
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { createDatabase } from '../support/database.ts';
import { openNursery, type TestNursery } from '../support/nursery.ts';
import { buyPhone, type Phone } from '../support/browser/phone.ts';
import { stockOf } from '../support/stock.ts';
import { isLaterBuild, laterBuild, openYard } from '../support/browser/yard.ts';
import { violationsOn } from '../support/browser/axe.ts';

let nursery: TestNursery;
let yard: Awaited<ReturnType<typeof openYard>>;
let phone: Phone;
let lotId: string;

beforeEach(async () => {
  const database = await createDatabase();
  nursery = await openNursery(database);
  ({ lotId } = await stockOf(nursery).addReadyLot({ units: 100 }));
  yard = await openYard(database, nursery);
  phone = await buyPhone(yard.address, nursery);
  return async () => {
    await phone.throwAway();
    await yard.stop();
    await nursery.close();
    await database.drop();
  };
});

const lotPage = () => `${yard.address}/stock/lots/${lotId}`;
const losses = async () =>
  nursery.sql<{ person: string; units: number }>(
    `SELECT entry.person_id::text AS person, movement.from_units AS units
       FROM entry JOIN movement ON movement.nursery_id = entry.nursery_id AND movement.entry_id = entry.id
      WHERE entry.kind = 'lose' ORDER BY movement.from_units`,
  );

/** Looks at the lot with a connection, until the phone has kept what opens without one. */
async function lookAtLot(page: Page): Promise<void> {
  await page.goto(lotPage());
  await page.getByRole('button', { name: 'Lost', exact: true }).waitFor();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
}

async function loseWithoutLine(page: Page, units: number, waiting: string): Promise<void> {
  await page.goto(lotPage());
  await page.getByRole('button', { name: 'Lost', exact: true }).click();
  await page.getByRole('textbox', { name: 'How many' }).fill(String(units));
  await page.getByLabel('Why').selectOption({ label: 'drought' });
  await page.getByRole('button', { name: 'Write off', exact: true }).click();
  await page.getByText(waiting).first().waitFor();
}

const waitingWords = (count: number) => (count === 1 ? '1 entry waits to be sent' : `${count} entries wait to be sent`);

describe('a phone without signal', () => {
  it('opens closed, takes ten entries, is closed again, and books each once when it has signal', async () => {
    const before = await phone.open('online');
    await phone.signIn('grower');
    await lookAtLot(before);
    await phone.close();
    await yard.stop();

    const away = await phone.open('offline');
    for (let at = 1; at <= 10; at += 1) await loseWithoutLine(away, at, waitingWords(at));
    await away.getByText(/^No answer from the server\. This page is from May 20/).waitFor();
    expect(await violationsOn(away)).toEqual([]);
    await phone.close();

    const again = await phone.open('offline');
    await again.goto(`${yard.address}/outbox`);
    await again.getByText(waitingWords(10)).first().waitFor();
    expect(await again.getByRole('heading', { level: 3 }).count()).toBe(10);
    await phone.close();
    expect(await losses()).toEqual([]);

    await yard.start();
    const home = await phone.open('online');
    await home.goto(yard.address);
    const person = nursery.people.grower.personId;
    await expect.poll(losses).toEqual(Array.from({ length: 10 }, (_, at) => ({ person, units: at + 1 })));
    await home.getByText('Everything is sent').first().waitFor();
    // The one that was tried in vain alone, the others together.
    expect(yard.asked().filter((url) => /\/trpc\/(stock\.loseFromLot|outbox\.sendEntries)/.test(url))).toHaveLength(2);
    // Four openings of a browser and ten of a page: twice as much as other journeys.
  }, 300_000);

  it('says so where a page was never opened on it', async () => {
    const before = await phone.open('online');
    await phone.signIn('grower');
    await lookAtLot(before);
    await phone.close();
    const away = await phone.open('offline');
    await away.goto(`${yard.address}/plants`);
    await away.getByText('This device has not kept this page.').waitFor();
    expect(await violationsOn(away)).toEqual([]);
  });

  it('dates entries by its own clock, and shows what is new as soon as there is signal', async () => {
    const before = await phone.open('online');
    await phone.signIn('grower');
    await lookAtLot(before);
    await phone.close();
    nursery.clock.set('2026-05-21');
    const away = await phone.open('offline');
    await loseWithoutLine(away, 4, waitingWords(1));
    await away.context().setOffline(false);
    await away.getByText('Everything is sent').first().waitFor();
    await expect.poll(() => away.getByText(/^No answer from the server/).count()).toBe(0);
    const [entry] = await nursery.sql<{ on: string }>(`SELECT happened_on::text AS on FROM entry WHERE kind = 'lose'`);
    expect(entry).toEqual({ on: '2026-05-21' });
  });
});

describe('an update of the app', () => {
  it('keeps what waits and is there at the next opening, also without signal', async () => {
    const later = await laterBuild();
    try {
      const before = await phone.open('online');
      await phone.signIn('grower');
      await lookAtLot(before);
      await phone.close();
      const away = await phone.open('offline');
      await loseWithoutLine(away, 7, waitingWords(1));
      await phone.close();

      await yard.stop();
      await yard.start(later.folder);
      const updated = await phone.open('online');
      // Entries are held back, as on a line that carries pages but no answers.
      await updated.route('**/trpc/stock.loseFromLot', (route) => route.abort());
      await updated.goto(lotPage());
      expect(await isLaterBuild(updated)).toBe(true);
      await updated.getByText(waitingWords(1)).first().waitFor();
      await updated.evaluate(async () => {
        const registration = await navigator.serviceWorker.ready;
        const isInstalled = () => registration.waiting !== null;
        if (!isInstalled()) await registration.update();
        const worker = registration.installing;
        if (!isInstalled() && worker)
          await new Promise<void>((resolve) => {
            worker.addEventListener('statechange', () => {
              if (worker.state === 'installed') resolve();
            });
          });
      });
      await phone.close();

      const offline = await phone.open('offline');
      await offline.goto(lotPage());
      expect(await isLaterBuild(offline)).toBe(true);
      await offline.getByText(waitingWords(1)).first().waitFor();
      await offline.context().setOffline(false);
      await expect.poll(losses).toEqual([{ person: nursery.people.grower.personId, units: 7 }]);
    } finally {
      await later.remove();
    }
  });
});
