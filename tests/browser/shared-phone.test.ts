// What a phone keeps, for whom, and what becomes of what an older version kept.
import type { Role } from '@rootclock/domain';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { createDatabase } from '../support/database.ts';
import { idOf, openNursery, type TestNursery } from '../support/nursery.ts';
import { buyPhone, type Phone } from '../support/browser/phone.ts';
import { stockOf } from '../support/stock.ts';
import { openYard } from '../support/browser/yard.ts';

let nursery: TestNursery;
let yard: Awaited<ReturnType<typeof openYard>>;
let phone: Phone;
let lot: Awaited<ReturnType<ReturnType<typeof stockOf>['addReadyLot']>>;

beforeEach(async () => {
  const database = await createDatabase();
  nursery = await openNursery(database);
  lot = await stockOf(nursery).addReadyLot({ units: 100 });
  yard = await openYard(database, nursery);
  phone = await buyPhone(yard.address, nursery);
  return async () => {
    await phone.throwAway();
    await yard.stop();
    await nursery.close();
    await database.drop();
  };
});

const lotPage = () => `${yard.address}/stock/lots/${lot.lotId}`;

async function lookAs(role: Role): Promise<Page> {
  const page = await phone.open('online');
  await phone.signIn(role);
  await page.goto(lotPage());
  await page.getByRole('button', { name: 'Lost', exact: true }).waitFor();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  return page;
}

/** Everything that the app keeps in databases of the browser, as text. */
const keptOn = (page: Page) =>
  page.evaluate(async () => {
    const asked = <Answer>(request: IDBRequest<Answer>) =>
      new Promise<Answer>((resolve, reject) => {
        request.addEventListener('success', () => resolve(request.result));
        request.addEventListener('error', () => reject(request.error));
      });
    const database = await asked(indexedDB.open('rootclock-reads'));
    const kept = database.objectStoreNames.contains('reads')
      ? await asked(database.transaction('reads').objectStore('reads').getAll())
      : [];
    database.close();
    return JSON.stringify(kept);
  });

describe('a phone that several people use', () => {
  it('forgets what was read when its person signs out', async () => {
    const page = await lookAs('grower');
    await expect.poll(() => keptOn(page)).toContain('Test grower');
    await page.goto(`${yard.address}/more`);
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('button', { name: 'Sign in', exact: true }).waitFor();
    await expect.poll(() => keptOn(page)).toBe('[]');
    await phone.close();
    const away = await phone.open('offline');
    await away.goto(lotPage());
    await away.getByText('The server does not answer').first().waitFor();
    expect(await away.getByText('Test grower').count()).toBe(0);
  });

  it('forgets it when the session was ended from elsewhere, as soon as it hears of that', async () => {
    const page = await lookAs('grower');
    await nursery.sql('UPDATE token SET revoked_at = $1 WHERE revoked_at IS NULL', [nursery.clock.now()]);
    await page.reload();
    await page.getByRole('button', { name: 'Sign in', exact: true }).waitFor();
    await expect.poll(() => keptOn(page)).toBe('[]');
  });

  it('shows nothing of one person to the next, with signal and without', async () => {
    await lookAs('grower');
    await phone.signIn('crew');
    await phone.close();
    const page = await phone.open('online');
    await page.goto(yard.address);
    await page.getByRole('link', { name: 'Stock' }).first().waitFor();
    await expect.poll(() => keptOn(page)).toContain('Test crew');
    expect(await keptOn(page)).not.toContain('Test grower');
    await phone.close();
    const away = await phone.open('offline');
    await away.goto(lotPage());
    await away.getByText('This device has not kept this page.').waitFor();
    await away.goto(`${yard.address}/more`);
    await expect.poll(() => away.getByText('Test crew').count()).toBeGreaterThan(0);
    expect(await away.getByText('Test grower').count()).toBe(0);
  });

  it('keeps no session, no secret and nobody else of the nursery', async () => {
    const page = await lookAs('owner');
    for (const path of ['/people', '/settings/own', '/settings']) {
      await page.goto(yard.address + path);
      await page.waitForLoadState('networkidle');
    }
    const kept = await keptOn(page);
    expect(kept).toContain('Test owner');
    for (const other of ['Test crew', 'Test viewer', 'seenAt', 'codesLeft', '/calendar/'])
      expect(kept).not.toContain(other);
  });
});

describe('what an older version of the app kept', () => {
  it('goes out once each after the update, in the name of whoever made it', async () => {
    const entry = (name: string, personId: string, units: number) => ({
      id: idOf(name),
      name: 'stock.loseFromLot',
      title: '',
      body: { lotId: lot.lotId, placeId: lot.placeId, units, cause: 'drought', happenedOn: '2026-05-20' },
      personId,
      enteredAt: Date.parse('2026-05-20T16:00:00Z'),
      creates: [],
      from: '/',
      tries: 2,
      dueAt: 0,
      parked: null,
    });
    const { grower, crew } = nursery.people;
    const page = await phone.open('online');
    await phone.signIn('grower');
    // A file of the same origin, on which the app does not run.
    await page.goto(`${yard.address}/pot.svg`);
    await page.evaluate(
      (list) =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open('rootclock-outbox');
          opening.addEventListener('upgradeneeded', () => opening.result.createObjectStore('entries'));
          opening.addEventListener('success', () => {
            const change = opening.result.transaction('entries', 'readwrite');
            change.objectStore('entries').put(list, 'queue');
            change.addEventListener('complete', () => {
              opening.result.close();
              resolve();
            });
            change.addEventListener('error', () => reject(change.error));
          });
        }),
      [entry('first', grower.personId, 1), entry('of crew', crew.personId, 2), entry('second', grower.personId, 3)],
    );
    const booked = () =>
      nursery.sql<{ id: string; person: string }>(
        `SELECT id::text, person_id::text AS person FROM command WHERE name = 'loseFromLot' ORDER BY version`,
      );
    await page.goto(yard.address);
    await expect.poll(booked).toEqual(['first', 'second'].map((name) => ({ id: idOf(name), person: grower.personId })));
    await page.goto(`${yard.address}/outbox`);
    await page.getByText('1 entry of somebody else waits for their sign-in.').waitFor();
  });
});

describe('several tabs', () => {
  it('send what each of them took in once, when the signal comes back to all of them', async () => {
    const first = await lookAs('grower');
    const second = await first.context().newPage();
    const tabs = [first, second];
    await second.goto(lotPage());
    await first.context().setOffline(true);
    for (const [at, tab] of tabs.entries()) {
      await tab.getByRole('button', { name: 'Lost', exact: true }).click();
      await tab.getByRole('textbox', { name: 'How many' }).fill(String(at + 1));
      await tab.getByLabel('Why').selectOption({ label: 'drought' });
      await tab.getByRole('button', { name: 'Write off', exact: true }).click();
      await tab
        .getByText(at === 0 ? '1 entry waits to be sent' : '2 entries wait to be sent')
        .first()
        .waitFor();
    }
    await first.context().setOffline(false);
    for (const tab of tabs) await tab.getByText('Everything is sent').first().waitFor();
    const booked = await nursery.sql<{ units: number }>(
      `SELECT movement.from_units AS units FROM entry JOIN movement USING (nursery_id)
        WHERE movement.entry_id = entry.id AND entry.kind = 'lose' ORDER BY units`,
    );
    expect(booked).toEqual([{ units: 1 }, { units: 2 }]);
    expect(yard.asked().filter((url) => url === '/trpc/stock.loseFromLot')).toHaveLength(2);
  });
});
