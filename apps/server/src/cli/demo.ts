// `rootclock demo`: fills a database that has no nursery yet, and the same at a first start.
import { readConfig } from '../config.ts';
import { migrate } from '../db/migrate.ts';
import { openDatabase } from '../db/pool.ts';
import { loadDemo } from '../demo/load.ts';
import { setupFacts } from '../features/people/store.ts';
import { CommandFailure } from './failure.ts';
import { withNursery, type Addresses } from './nursery-database.ts';

export async function isEmpty(databaseUrl: string): Promise<boolean> {
  const database = openDatabase(databaseUrl, { connections: 1 });
  try {
    return !(await setupFacts(database)).anyNursery;
  } finally {
    await database.close();
  }
}

/** An empty database gets the demo nursery once; it is told, since a first start takes that much longer. */
export async function fillWithDemo(addresses: Addresses): Promise<void> {
  const started = Date.now();
  console.log('Making the demo nursery, an invented one (ROOTCLOCK_DEMO=off begins empty) ...');
  await loadDemo(addresses);
  console.log(`The demo nursery was made in ${Math.round((Date.now() - started) / 1000)} s.`);
}

export function demo(): Promise<number> {
  let made = false;
  const fill = async (addresses: Addresses) => {
    await fillWithDemo(addresses);
    made = true;
  };
  return withNursery(readConfig(process.env), { purpose: 'demo', fill }, async (addresses) => {
    await migrate(addresses.ownerUrl);
    if (made) return 0;
    if (!(await isEmpty(addresses.url)))
      throw new CommandFailure('There is a nursery already; the demo is only for a database without one.');
    await fill(addresses);
    return 0;
  });
}
