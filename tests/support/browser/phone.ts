// A phone that is closed and opened again: what its browser keeps lies in a folder that outlives the browser.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Role } from '@rootclock/domain';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { inject } from 'vitest';
import { launchOptions } from './browser.ts';
import { sessionOf, type SignedInNursery } from '../session.ts';

const SIZE = { width: 390, height: 844 };

export interface Phone {
  /** Opens the browser with all that it kept, with a connection or without. */
  open(line: 'online' | 'offline'): Promise<Page>;
  close(): Promise<void>;
  /** The cookie is this person's from now on, and no page was told. */
  signIn(role: Role): Promise<void>;
  throwAway(): Promise<void>;
}

/** The phone's clock is the nursery's. */
export async function buyPhone(address: string, nursery: SignedInNursery): Promise<Phone> {
  const folder = await mkdtemp(path.join(tmpdir(), 'rootclock-phone-'));
  let context: BrowserContext | undefined;
  const close = async () => {
    await context?.close();
    context = undefined;
  };
  return {
    open: async (line) => {
      context = await chromium.launchPersistentContext(folder, {
        ...launchOptions(inject('browser')),
        viewport: SIZE,
        hasTouch: true,
        locale: 'en-US',
        offline: line === 'offline',
      });
      await context.clock.setSystemTime(nursery.clock.now());
      return context.pages()[0] ?? (await context.newPage());
    },
    close,
    signIn: async (role) => {
      // As long as sessions last that nobody ends.
      const value = await sessionOf(nursery, role, 30);
      const expires = Date.now() / 1000 + 86_400;
      await context?.addCookies([
        { name: 'rootclock_session', value, url: address, httpOnly: true, sameSite: 'Lax', expires },
      ]);
    },
    throwAway: async () => {
      await close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}
