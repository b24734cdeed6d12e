// That axe sees what is wrong: every other test of a page only ever hears that nothing is.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { violationsOn } from '../support/browser/axe.ts';
import { launchBrowser } from '../support/browser/browser.ts';

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launchBrowser(inject('browser'));
  page = await browser.newPage();
});
afterAll(() => browser.close());

const show = (body: string) =>
  page.setContent(`<!doctype html><html lang="en"><head><title>Bench</title></head><body>${body}</body></html>`);

const faint = '<p id="faint" style="color: #bbb; background: #fff">six plants</p>';

it('finds nothing where nothing is wrong', async () => {
  await show('<main><h1>Bench 1</h1><p>six plants</p></main>');
  expect(await violationsOn(page)).toEqual([]);
});

it('names each fault and where it is, also on a page that changed since it was asked before', async () => {
  await show(`<main><h1>Bench 1</h1>${faint}</main>`);
  expect(await violationsOn(page)).toEqual(['color-contrast: #faint']);
  await page.evaluate(() => document.querySelector('main')?.insertAdjacentHTML('beforeend', '<button></button>'));
  expect(await violationsOn(page)).toEqual(['button-name: button', 'color-contrast: #faint']);
});

it('looks at one part alone where it is asked to', async () => {
  await show(`<main><h1>Bench 1</h1><div id="part"><button></button></div>${faint}</main>`);
  expect(await violationsOn(page, '#part')).toEqual(['button-name: button']);
});

it('is not passed over in a page with frames, into which it would not look', async () => {
  await show('<iframe title="inner" srcdoc="<button></button>"></iframe>');
  await expect(violationsOn(page)).rejects.toThrow('frames');
});
