import { hash } from '@node-rs/argon2';
import { firstSeasonEnd } from '@rootclock/domain';
import { openDatabase } from '../db/pool.ts';
import { dayIn } from '../db/day-in.ts';
import { DEMO_SIGN_INS } from '../features/people/demo-sign-ins.ts';
import { planBands } from './seasons/bands.ts';
import { planDeliveries } from './seasons/deliveries.ts';
import { planGardens } from './seasons/gardens.ts';
import { planExpectations } from './seasons/planning.ts';
import { layGrounds } from './grounds.ts';
import { planIncidents } from './seasons/incidents.ts';
import { DemoLots } from './lots.ts';
import { takeInOpening } from './seasons/opening.ts';
import { planPacks } from './seasons/packs.ts';
import { planPropagation } from './seasons/propagation.ts';
import { planWinter } from './seasons/winter.ts';
import { planProtocols } from './seasons/protocols.ts';
import { planSeedStores } from './seasons/seed-stores.ts';
import { planSubstitutions } from './seasons/substitutions.ts';
import { Stage, ZONE } from './stage.ts';
import { addDemoNursery } from './store.ts';
import { planUpkeep } from './seasons/upkeep.ts';

/**
 * Fills an empty database with the demo nursery: three seasons of an invented nursery, ending today, the same each time for the same day.
 * Only the nursery and its people are written directly, since no screen makes a nursery that is marked as a demo; all else goes through
 * the commands that people use.
 */
export async function loadDemo({ url, ownerUrl }: { url: string; ownerUrl: string }, now = new Date()): Promise<void> {
  // A first start on a busy machine may be slow, and nobody waits for a single command of it.
  const database = openDatabase(url, { connections: 2, patienceMs: 60_000 });
  try {
    const stage = new Stage(database, dayIn(now, ZONE));
    await beginNursery(ownerUrl, stage);
    // The first of three whole seasons: late in the year this one counts, early in it the one before is the last.
    const thisYear = Number(stage.today.slice(0, 4));
    const lastYear = stage.today.slice(5) >= '07-01' ? thisYear : thisYear - 1;
    const firstDay = `${lastYear - 2}-02-10`;
    stage.setDay(firstDay);
    const grounds = await layGrounds(stage);
    const lots = new DemoLots();
    const mothers = await takeInOpening(stage, grounds, lots, firstDay);
    planPropagation(stage, grounds, lots, mothers, lastYear - 2, thisYear);
    // Packs are drawn on in spring: before that the ones of the year before are still the last.
    planPacks(stage, grounds, lots, stage.today.slice(5) >= '03-15' ? thisYear : thisYear - 1);
    planSeedStores(stage, grounds, lastYear);
    planDeliveries(stage, grounds, lots, lastYear - 2, thisYear);
    planProtocols(stage, lastYear - 2);
    planUpkeep(stage, grounds, lots, lastYear - 2, thisYear);
    planWinter(stage, grounds, lots, lastYear - 2, thisYear);
    await planGardens(stage, grounds, lastYear - 2, thisYear);
    planBands(stage, grounds, lots);
    planIncidents(stage, grounds, lots);
    planExpectations(stage, grounds);
    planSubstitutions(stage);
    await stage.play();
  } finally {
    await database.close();
  }
}

async function beginNursery(ownerUrl: string, stage: Stage): Promise<void> {
  const people = await Promise.all(
    DEMO_SIGN_INS.map(async ({ password, ...person }) => ({
      ...person,
      personId: stage.chance.id(),
      passwordHash: await hash(password),
    })),
  );
  await addDemoNursery(ownerUrl, {
    nurseryId: stage.nurseryId,
    name: 'Sedge Hollow demo nursery',
    zone: ZONE,
    region: 'IA',
    seasonEndOn: firstSeasonEnd(stage.today),
    people,
  });
  for (const { personId, name, email, role } of people)
    stage.addPerson({ nurseryId: stage.nurseryId, personId, personName: name, email, role });
}
