// The whole product for one journey: the real server with the built web app on a port of its own, and a page signed in to it.
import { existsSync } from 'node:fs';
import path from 'node:path';
import type { Role } from '@rootclock/domain';
import { repositoryRoot } from '@rootclock/server/config';
import type { Page } from 'playwright-core';
import { inject } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { launchBrowser } from './browser.ts';
import type { TestDatabase } from '../database.ts';
import { sessionOf, type SignedInNursery } from '../session.ts';

export const PHONE = { width: 360, height: 740 };
export const DESK = { width: 1280, height: 800 };

export interface Journey {
  address: string;
  /** A page on a device of this size, on which a person of this role is signed in, or for null nobody. */
  open(role: Role | null, size: { width: number; height: number }): Promise<Page>;
  close(): Promise<void>;
}

/**
 * Serves a nursery to a real browser. The server's clock is the nursery's, so a journey happens on the day that its test says. A page keeps nothing for a day
 * without signal unless it is to: each new device would fetch the whole app for it, which takes a third of a journey's time.
 */
export async function openJourney(
  database: TestDatabase,
  nursery: SignedInNursery,
  { keepsShell = false } = {},
): Promise<Journey> {
  // A build of one's own may lie elsewhere, so that people who work in one clone do not overwrite each other's.
  const webRoot = process.env.ROOTCLOCK_WEB_ROOT ?? path.join(repositoryRoot, 'apps/web/dist');
  if (!existsSync(path.join(webRoot, 'index.html')))
    throw new Error('the web app is not built: run `npm test`, or `npx vite build apps/web` first');
  const app = await createApp({
    databaseUrl: database.url,
    webRoot,
    clock: nursery.clock.now,
    ...(nursery.filesFolder !== undefined && { filesFolder: nursery.filesFolder }),
  });
  const address = await app.listen({ host: '127.0.0.1', port: 0 });
  const browser = await launchBrowser(inject('browser'));
  return {
    address,
    open: async (role, viewport) => {
      const context = await browser.newContext({
        viewport,
        hasTouch: viewport.width < 640,
        locale: 'en-US',
        serviceWorkers: keepsShell ? 'allow' : 'block',
      });
      if (role !== null)
        await context.addCookies([
          {
            name: 'rootclock_session',
            value: await sessionOf(nursery, role),
            url: address,
            httpOnly: true,
            sameSite: 'Lax',
          },
        ]);
      return context.newPage();
    },
    close: async () => {
      await browser.close();
      await app.close();
    },
  };
}
