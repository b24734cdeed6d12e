// Fills the nursery's empty database with the demo nursery, for whoever started with ROOTCLOCK_DEMO=off or brings a database of their own.
import { placeOf, readConfig } from '../config.ts';
import { migrate } from '../db/migrate.ts';
import { loadDemo } from '../demo/load.ts';
import { CommandFailure } from './failure.ts';
import { hasNursery } from './greeting.ts';
import { withOwnerUrl } from './nursery-database.ts';

export async function demo(): Promise<number> {
  const config = readConfig(process.env);
  return withOwnerUrl(config, 'demo', async (ownerUrl) => {
    await migrate(ownerUrl);
    if (await hasNursery(ownerUrl)) throw new CommandFailure(`There is a nursery in ${placeOf(ownerUrl)} already; the demo only fills an empty database.`);
    const started = Date.now();
    await loadDemo({ url: ownerUrl, ownerUrl });
    console.log(`The demo nursery was made in ${Math.round((Date.now() - started) / 1000)} s.`);
    return 0;
  });
}
