// `rootclock check`: proves all data laws over the whole database and its store of files, beside a running server or on its own.
import { DATA_LAWS } from '@rootclock/domain';
import { filesFolderOf, readConfig } from '../config.ts';
import { checkLaws } from '../db/check.ts';
import type { StoreToProve } from '../db/check/file-proofs.ts';
import { folderStore } from '../files/folder-store.ts';
import { CommandFailure } from './failure.ts';
import { withNursery } from './nursery-database.ts';

const REHASH = '--rehash';

export async function check(args: string[] = []): Promise<number> {
  if (args.some((each) => each !== REHASH))
    throw new CommandFailure(`check takes ${REHASH} alone, which reads every photo and paper to its end.`);
  const config = readConfig(process.env);
  const toProve = { files: folderStore(filesFolderOf(config)), rehash: args.includes(REHASH), now: new Date() };
  return withNursery(config, { purpose: 'check' }, ({ ownerUrl }) => tellLaws(ownerUrl, toProve));
}

/** Proves the laws and prints what came of it. Answers the exit code: 1 where one is broken. */
export async function tellLaws(ownerUrl: string, toProve: StoreToProve): Promise<number> {
  const { breaches, looked, laws, store } = await checkLaws(ownerUrl, toProve);
  for (const law of laws) {
    const broken = breaches.filter((breach) => breach.law === law);
    if (broken.length === 0) continue;
    console.log(`BROKEN ${law}: ${DATA_LAWS[law]}`);
    for (const { nursery, what } of broken) console.log(`  ${nursery === null ? '' : `nursery ${nursery}: `}${what}`);
  }
  const brokenLaws = new Set(breaches.map((breach) => breach.law)).size;
  const { nurseries, lots, entries, movements } = looked;
  const stored = store?.looked ?? 0;
  console.log(
    `Looked at ${nurseries} nurseries, ${lots} lots, ${entries} entries, ${movements} movements, ${stored} stored files.`,
  );
  for (const { nursery, sha256 } of store?.orphans ?? [])
    console.log(`Nothing needs ${nursery}/${sha256} in the store; the server takes it out within two days.`);
  console.log(brokenLaws === 0 ? `All ${laws.length} laws hold.` : `${brokenLaws} of ${laws.length} laws are broken.`);
  return brokenLaws === 0 ? 0 : 1;
}
