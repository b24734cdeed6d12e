// Photos as people add, caption and remove them, on a phone and at a desk, on each page that has them.
import { rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addGrounds } from '../integration/files/grounds.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { violationsOn } from '../support/browser/axe.ts';
import { DESK, type Journey, openJourney, PHONE } from '../support/browser/journey.ts';
import { openNursery, type TestNursery } from '../support/nursery.ts';
import { drawing, samplePdf } from '../support/pictures.ts';

let database: TestDatabase;
let nursery: TestNursery;
let journey: Journey;
let grounds: Awaited<ReturnType<typeof addGrounds>>;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  grounds = await addGrounds(nursery);
  journey = await openJourney(database, nursery);
});
afterAll(async () => {
  await journey.close();
  await nursery.close();
  await database.drop();
});

const jpeg = async (seed: number) => ({
  name: `photo-${seed}.jpg`,
  mimeType: 'image/jpeg',
  buffer: await drawing(seed, { width: 1200, height: 900 }).jpeg().toBuffer(),
});

type Kind = 'lot' | 'batch' | 'place' | 'plant' | 'site';
const addressOf = (kind: Kind) =>
  ({
    lot: `/stock/lots/${grounds.lot.id}`,
    batch: `/propagation/${grounds.batch.id}`,
    place: `/stock/places/${grounds.place.id}`,
    plant: `/plants/${grounds.plant.id}`,
    site: `/gardens/sites/${grounds.site.id}`,
  })[kind];

async function openPage(page: Page, kind: Kind): Promise<void> {
  await page.goto(`${journey.address}${addressOf(kind)}`);
  await page.getByRole('heading', { level: 2, name: 'Photos', exact: true }).waitFor();
}
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });
const list = (kind: Kind) => nursery.as('viewer').files.listAttachments({ subject: grounds[kind] });
const isWide = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth);
/** Every picture on the page has come and could be shown. */
const allShown = (page: Page) =>
  page.waitForFunction(() => [...document.images].every((each) => each.complete && each.naturalWidth > 0));

/** A way to tell the file inputs apart: what a phone opens for them. */
const camera = (page: Page) => page.locator('input[type=file][capture=environment]');
const chooser = (page: Page) => page.locator('input[type=file]:not([capture])');

describe.each([
  ['phone', PHONE],
  ['desk', DESK],
] as const)('on a %s', (device, size) => {
  it('a photo is taken, shown before it is sent, captioned, and stands in the story and the head of the lot', async () => {
    // Of photos of one day the one that was added last is the newest.
    nursery.clock.set(device === 'phone' ? '2026-05-20T17:00:00Z' : '2026-05-20T18:00:00Z');
    const page = await journey.open('crew', size);
    await openPage(page, 'lot');
    expect(await camera(page).getAttribute('accept')).toBe('image/jpeg,image/png,image/webp');
    expect(await button(page, 'Take photo').isVisible()).toBe(device === 'phone');
    await camera(page).setInputFiles(await jpeg(device === 'phone' ? 1 : 2));
    const sheet = page.getByRole('dialog', { name: 'New photo' });
    await sheet.getByAltText('The photo you chose').waitFor();
    await allShown(page);
    expect(await violationsOn(page)).toEqual([]);
    await sheet.getByLabel('Caption').fill(`First bloom on a ${device}`);
    await sheet.getByRole('button', { name: 'Save photo' }).click();
    await page.getByText('Photo saved.').first().waitFor();

    const opened = button(page, new RegExp(`^Photo: First bloom on a ${device}, `));
    // In the head, in the list of photos, and in the story.
    await expect.poll(() => opened.count()).toBe(3);
    await allShown(page);
    expect(await violationsOn(page)).toEqual([]);
    expect(await isWide(page)).toBe(false);
    expect(await list('lot')).toContainEqual(expect.objectContaining({ caption: `First bloom on a ${device}` }));
  });

  it('its caption is changed, and it is removed and brought back', async () => {
    const page = await journey.open('crew', size);
    await openPage(page, 'place');
    await chooser(page).setInputFiles(await jpeg(3));
    await button(page, 'Save photo').click();
    await page.getByText('Photo saved.').first().waitFor();
    await button(page, /^Photo: /)
      .first()
      .click();
    const sheet = page.getByRole('dialog');
    await sheet.getByLabel('Caption').fill('Shade cloth is up');
    await allShown(page);
    expect(await violationsOn(page)).toEqual([]);
    await sheet.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByText('Shade cloth is up', { exact: false }).first().waitFor();
    await button(page, /^Photo: Shade cloth is up/)
      .first()
      .click();
    await page.getByRole('dialog').getByRole('button', { name: 'Remove', exact: true }).click();
    await page.getByText('Photo removed.').waitFor();
    await expect.poll(async () => (await list('place')).filter(({ caption }) => caption !== '').length).toBe(0);
    await page.getByText('No photos yet').waitFor();
    await button(page, 'Undo').last().click();
    await button(page, /^Photo: Shade cloth is up/)
      .first()
      .waitFor();
    const [photo] = await list('place');
    await nursery
      .as('crew')
      .files.removeAttachment({ commandId: crypto.randomUUID(), body: { attachmentId: photo?.id ?? '' } });
  });

  it('a file that is none is refused in the sheet, and another can be chosen', async () => {
    const page = await journey.open('crew', size);
    await openPage(page, 'plant');
    const broken = { ...(await jpeg(5)), buffer: (await jpeg(5)).buffer.subarray(0, 3000) };
    await chooser(page).setInputFiles(broken);
    await button(page, 'Save photo').click();
    await page.getByText('This photo can’t be read. It may be damaged. Take it again or choose another.').waitFor();
    expect(await violationsOn(page)).toEqual([]);
    await button(page, 'Close').click();
    // Of a file on disk the browser learns no more than it asks for.
    const large = path.join(nursery.filesFolder, 'large.jpg');
    await writeFile(large, Buffer.alloc(15 * 1024 * 1024 + 1));
    await chooser(page).setInputFiles(large);
    await page.getByText('This file is too large. Choose one of 15 MB or less.').waitFor();
    await button(page, 'Close').click();
    await rm(large);
    expect(await list('plant')).toEqual([]);
  });
});

it('a photo that is taken without a line is kept with its file, and goes out with the next one', async () => {
  const page = await journey.open('crew', PHONE);
  await openPage(page, 'batch');
  await page.context().setOffline(true);
  await camera(page).setInputFiles(await jpeg(11));
  await page.getByRole('dialog').getByLabel('Caption').fill('Rooted');
  await button(page, 'Save photo').click();
  await page.getByText('Kept on this device. It goes out as soon as the server answers.').waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await page.getByRole('dialog').getByRole('button', { name: 'Close', exact: true }).last().click();
  expect(await list('batch')).toEqual([]);
  await page.context().setOffline(false);
  await expect.poll(async () => (await list('batch')).map(({ caption }) => caption)).toEqual(['Rooted']);
  await button(page, /^Photo: Rooted/)
    .first()
    .waitFor();
  const [photo] = await list('batch');
  const commandId = crypto.randomUUID();
  await nursery.as('crew').files.removeAttachment({ commandId, body: { attachmentId: photo?.id ?? '' } });
});

it('each page that can have photos takes one, and a paper beside it', async () => {
  const page = await journey.open('crew', DESK);
  for (const kind of ['batch', 'site', 'plant'] as const) {
    await openPage(page, kind);
    await chooser(page).setInputFiles(await jpeg(kind.length));
    await button(page, 'Save photo').click();
    await page.getByText('Photo saved.').first().waitFor();
    await expect.poll(() => button(page, /^Photo: /).count()).toBe(kind === 'batch' ? 3 : 2);
  }
  await chooser(page).setInputFiles({ name: 'Permit 12.pdf', mimeType: 'application/pdf', buffer: samplePdf });
  await button(page, 'Save PDF').click();
  await button(page, /^PDF: Permit 12, /).click();
  const saved = page.waitForEvent('download');
  await page.getByRole('dialog').getByRole('link', { name: 'PDF' }).click();
  expect((await saved).suggestedFilename()).toBe('paper-2026-05-20.pdf');
});

it('who only looks sees photos and can change nothing', async () => {
  const page = await journey.open('viewer', PHONE);
  await openPage(page, 'lot');
  await button(page, /^Photo: First bloom/)
    .first()
    .click();
  await page.getByRole('dialog').getByRole('img').waitFor();
  expect(await page.locator('input[type=file]').count()).toBe(0);
  expect(await page.getByRole('button', { name: 'Remove', exact: true }).count()).toBe(0);
});
