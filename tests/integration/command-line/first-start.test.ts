import { openOwnNursery } from '@rootclock/server/cli/nursery-database';
import { Stopped, type StopReason, type StopRequest } from '@rootclock/server/cli/stop-request';
import { dropDatabase, hasDatabase } from '@rootclock/server/db/databases';
import pg from 'pg';
import { afterEach, describe, expect, inject, test } from 'vitest';

const urlOf = (name: string) => {
  const url = new URL(inject('adminUrl'));
  url.pathname = `/${name}`;
  return url.href;
};
const exists = (name: string) => hasDatabase(inject('adminUrl'), name);

afterEach(async () => {
  for (const name of ['rootclock', 'rootclock_first_start']) await dropDatabase(inject('adminUrl'), name);
});

const never: StopRequest = { asked: new Promise(() => {}), ask: () => {}, check: () => {} };

/** A stop that is asked for in the middle of the fill. */
function stopDuring(): StopRequest {
  let settle: (reason: StopReason) => void = () => {};
  let stopped = false;
  return {
    asked: new Promise((resolve) => {
      settle = resolve;
    }),
    ask(reason) {
      stopped = true;
      settle(reason);
    },
    check() {
      if (stopped) throw new Stopped('asked');
    },
  };
}

async function settingOf(url: string): Promise<string> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (
      (
        await client.query<{ setting: string }>(
          `SELECT source AS setting FROM pg_settings WHERE name = 'synchronous_commit'`,
        )
      ).rows[0]?.setting ?? ''
    );
  } finally {
    await client.end();
  }
}

describe('a first start', () => {
  test('leaves no nursery when the fill fails, and a second one makes it whole', async () => {
    await expect(openOwnNursery(urlOf, never, () => Promise.reject(new Error('in the middle')))).rejects.toThrow(
      'in the middle',
    );
    expect(await exists('rootclock')).toBe(false);
    await openOwnNursery(urlOf, never, () => Promise.resolve());
    expect(await exists('rootclock')).toBe(true);
  });

  test('leaves no nursery when it is stopped during the fill', async () => {
    const stop = stopDuring();
    const fill = () => {
      stop.ask({ words: 'asked', exitCode: 0 });
      return new Promise<void>(() => {});
    };
    await expect(openOwnNursery(urlOf, stop, fill)).rejects.toThrow(Stopped);
    expect(await exists('rootclock')).toBe(false);
  });

  test('fills only once', async () => {
    let fills = 0;
    const fill = () => {
      fills += 1;
      return Promise.resolve();
    };
    await openOwnNursery(urlOf, never, fill);
    await openOwnNursery(urlOf, never, fill);
    expect(fills).toBe(1);
  });

  test('leaves no database that commits without waiting for the disk', async () => {
    const { ownerUrl } = await openOwnNursery(urlOf, never, () => Promise.resolve());
    expect(await settingOf(ownerUrl)).not.toBe('database');
  });
});
