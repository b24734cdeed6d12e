import type { Page, Request } from 'playwright-core';
import { expect } from 'vitest';

export interface Watched {
  page: Page;
  /** What the browser said was wrong, and answers of the server that were errors, since the last visit. */
  troubles(): string[];
  /** Opens an address and waits until nothing is on its way any more. */
  visit(address: string): Promise<void>;
}

/** Watches a page, so that a test can tell what went wrong on it and when it stands still. */
export function watch(page: Page): Watched {
  let troubles: string[] = [];
  const underWay = new Set<Request>();
  // The stream of changes never ends by itself.
  const isAwaited = (url: string) =>
    (url.includes('/trpc/') && !url.includes('/trpc/live.')) || url.includes('/assets/');
  page.on('console', (message) => void (message.type() === 'error' && troubles.push(`console: ${message.text()}`)));
  page.on('pageerror', (error) => void troubles.push(`page: ${error.message}`));
  page.on(
    'response',
    (response) =>
      void (response.status() >= 400 && troubles.push(`${response.status()}: ${new URL(response.url()).pathname}`)),
  );
  page.on('request', (request) => void (isAwaited(request.url()) && underWay.add(request)));
  const arrived = (request: Request) => void underWay.delete(request);
  page.on('requestfinished', arrived);
  page.on('requestfailed', arrived);

  return {
    page,
    troubles: () => troubles,
    visit: async (address) => {
      troubles = [];
      underWay.clear();
      await page.goto(address);
      // A page that has what it asked for may ask for more, so it stands still only when it did twice in a row.
      let still = 0;
      await expect
        .poll(
          async () => {
            const isShown = (await page.locator('h1').count()) > 0 && (await page.locator('.skeleton').count()) === 0;
            still = isShown && underWay.size === 0 ? still + 1 : 0;
            return still;
          },
          { timeout: 20_000, interval: 60 },
        )
        .toBeGreaterThanOrEqual(2);
    },
  };
}

/** What stands out over the right edge, as far as it makes the page wider than the screen. */
export function overflowOf(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth <= width) return [];
    return [...document.querySelectorAll('body *')]
      .filter((element) => element.getBoundingClientRect().right > width + 1)
      .slice(0, 5)
      .map(
        (element) =>
          `${element.tagName.toLowerCase()}.${element.className} ends at ${Math.round(element.getBoundingClientRect().right)} of ${width}`,
      );
  });
}
