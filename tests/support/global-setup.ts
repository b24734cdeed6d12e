// Once for a whole run: a PostgreSQL server, one migrated database to copy for each test file, and a browser.
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';
import { createDatabase, ensureServerLogin } from '@rootclock/server/db/databases';
import { migrate } from '@rootclock/server/db/migrate';
import type { TestProject } from 'vitest/node';
import { prepareBrowser, type Browser } from './browser/browser.ts';
import { startTestServer } from './postgres.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The owner's address of a database to send CREATE DATABASE from. */
    adminUrl: string;
    /** The server's login, in the template database. */
    loginUrl: string;
    template: string;
    browser: Browser;
    /** The server as it is compiled for use. */
    program: string;
  }
}

const template = 'rootclock_template';

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await startTestServer();
  try {
    const adminUrl = server.url('postgres');
    await createDatabase(adminUrl, template);
    await migrate(server.url(template));
    project.provide('adminUrl', adminUrl);
    project.provide('loginUrl', await ensureServerLogin(server.url(template)));
    project.provide('template', template);
    project.provide('program', compile());
    project.provide('browser', await prepareBrowser());
  } catch (error) {
    await server.stop();
    throw error;
  }
  return () => server.stop();
}

/** Compiles what the sources are now, so that tests start what people start, and in a third of the time. */
function compile(): string {
  const run = path.join(repositoryRoot, 'apps/server/bootstrap/run.mjs');
  return execFileSync(process.execPath, [run, 'compile'], { encoding: 'utf8' }).trim();
}
