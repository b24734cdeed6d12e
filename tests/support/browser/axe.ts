// Asks axe about a page in that page itself: the usual wrapper brings axe in twice and opens a second page for each answer.
import axe from 'axe-core';
import type { Page } from 'playwright-core';

declare global {
  interface Window {
    axe?: typeof axe;
  }
}

/** Nothing moves or fades in any more: what is half faded in has too little contrast for axe, and for nobody else. */
const settled = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
    const ending = document
      .getAnimations()
      .filter(({ effect }) => effect !== null && effect.getComputedTiming().endTime !== Infinity);
    await Promise.allSettled(ending.map(({ finished }) => finished));
  });

/** A page that was not loaded anew since the last question still has its axe. */
async function bringAxe(page: Page): Promise<void> {
  if (await page.evaluate(() => window.axe !== undefined)) return;
  // Half the work of handing the text to page.evaluate, which keeps and evaluates it as a value of ours.
  const session = await page.context().newCDPSession(page);
  const { exceptionDetails } = await session.send('Runtime.evaluate', { expression: `${axe.source};undefined` });
  await session.detach();
  if (exceptionDetails !== undefined) throw new Error(`axe could not be brought in: ${exceptionDetails.text}`);
}

/** What axe finds wrong on the page as it stands, or in one part of it, in a form that a failing test prints readably. */
export async function violationsOn(page: Page, part = 'html'): Promise<string[]> {
  // Asked so, axe would not look into frames.
  if (page.frames().length > 1) throw new Error('this page has frames, into which nobody would look');
  await settled(page);
  await bringAxe(page);
  return page.evaluate(async (include) => {
    const { violations } = await window.axe!.run(
      { include: [include] },
      {
        // Without this axe describes every node of a long list that passes as well, and takes about twice as long.
        resultTypes: ['violations'],
        runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] },
      },
    );
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`);
  }, part);
}
