// The server as a phone in the yard meets it: there, gone, and there again at the same address, perhaps with another build of the app.
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';
import type { Page } from 'playwright-core';
import { createApp } from '../../../apps/server/src/app.ts';
import type { TestDatabase } from '../database.ts';
import type { TestNursery } from '../nursery.ts';

export const builtApp = process.env.ROOTCLOCK_WEB_ROOT ?? path.join(repositoryRoot, 'apps/web/dist');

export async function openYard(database: TestDatabase, nursery: TestNursery) {
  const begin = async (port: number, webRoot: string) => {
    const app = await createApp({ databaseUrl: database.url, webRoot, clock: nursery.clock.now });
    const asked: string[] = [];
    app.addHook('onRequest', async ({ url }) => void asked.push(url));
    await app.listen({ host: '127.0.0.1', port });
    return { app, asked };
  };
  let server = await begin(0, builtApp);
  const { port } = server.app.server.address() as { port: number };
  return {
    address: `http://127.0.0.1:${port}`,
    /** What was asked for since the server was last started. */
    asked: () => server.asked,
    stop: () => server.app.close(),
    start: async (webRoot = builtApp) => {
      server = await begin(port, webRoot);
    },
  };
}

/** Whether the page is that of the later build: by what no script changes. */
export const isLaterBuild = async (page: Page): Promise<boolean> =>
  (await page.locator('meta[name="build"][content="later"]').count()) === 1;

/** The same app as a later build: another page, and a worker that knows it. */
export async function laterBuild(): Promise<{ folder: string; remove: () => Promise<void> }> {
  const folder = await mkdtemp(path.join(tmpdir(), 'rootclock-build-'));
  const changing = ['index.html', 'service-worker.js'];
  await cp(builtApp, folder, {
    recursive: true,
    filter: (file) => !/(index\.html|service-worker\.js)\.(br|gz)$/.test(file),
  });
  for (const name of changing) {
    const file = path.join(folder, name);
    const text = await readFile(file, 'utf8');
    const changed =
      name === 'index.html'
        ? text.replace('<title>', '<meta name="build" content="later" /><title>')
        : text.replace(/(url:`\/index\.html`,revision:`)[0-9a-f]+/, '$1later');
    if (changed === text) throw new Error(`${name} was not built as expected`);
    await writeFile(file, changed);
  }
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) };
}
