// `rootclock check`: proves all data laws over the whole database, beside a running server or on its own.
import { DATA_LAWS } from '@rootclock/domain';
import { readConfig } from '../config.ts';
import { checkLaws } from '../db/check.ts';
import { withNursery } from './nursery-database.ts';

export function check(): Promise<number> {
  return withNursery(readConfig(process.env), { purpose: 'check' }, ({ ownerUrl }) => tellLaws(ownerUrl));
}

/** Proves the laws and prints what came of it. Answers the exit code: 1 where one is broken. */
export async function tellLaws(ownerUrl: string): Promise<number> {
  const { breaches, looked, laws } = await checkLaws(ownerUrl);
  for (const law of laws) {
    const broken = breaches.filter((breach) => breach.law === law);
    if (broken.length === 0) continue;
    console.log(`BROKEN ${law}: ${DATA_LAWS[law]}`);
    for (const { nursery, what } of broken) console.log(`  ${nursery === null ? '' : `nursery ${nursery}: `}${what}`);
  }
  const brokenLaws = new Set(breaches.map((breach) => breach.law)).size;
  const { nurseries, lots, entries, movements } = looked;
  console.log(`Looked at ${nurseries} nurseries, ${lots} lots, ${entries} entries, ${movements} movements.`);
  console.log(brokenLaws === 0 ? `All ${laws.length} laws hold.` : `${brokenLaws} of ${laws.length} laws are broken.`);
  return brokenLaws === 0 ? 0 : 1;
}
