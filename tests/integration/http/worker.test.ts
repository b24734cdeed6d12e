// The worker of the browser: asked for anew each time, and let in by the content policy from here alone.
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase } from '../../support/database.ts';

test('the worker is asked for anew at each opening, and pages may have one of ours alone', async () => {
  const database = await createDatabase();
  const webRoot = await mkdtemp(path.join(tmpdir(), 'rootclock-web-'));
  await writeFile(path.join(webRoot, 'index.html'), '<title>Rootclock</title>');
  await writeFile(path.join(webRoot, 'service-worker.js'), '// nothing');
  const app = await createApp({ databaseUrl: database.url, webRoot });
  try {
    const worker = await app.inject('/service-worker.js');
    expect([worker.statusCode, worker.headers['cache-control']]).toEqual([200, 'no-cache']);
    expect(worker.headers['content-type']).toMatch(/^(text|application)\/javascript/);
    const page = await app.inject({ url: '/', headers: { accept: 'text/html' } });
    expect(page.headers['content-security-policy']).toMatch(/(^|;)worker-src 'self'(;|$)/);
  } finally {
    await app.close();
    await database.drop();
    await rm(webRoot, { recursive: true, force: true });
  }
});
