import { hash } from '@node-rs/argon2';
import pg from 'pg';
import { openDatabase } from '../db/pool.ts';
import { dayIn } from '../db/runner.ts';
import { DEMO_SIGN_INS } from '../features/people/demo-sign-ins.ts';
import { planBands } from './bands.ts';
import { planDeliveries } from './deliveries.ts';
import { planGardens } from './gardens.ts';
import { layGrounds } from './grounds.ts';
import { planIncidents } from './incidents.ts';
import { DemoLots } from './lots.ts';
import { takeInOpening } from './opening.ts';
import { planPropagation } from './propagation.ts';
import { Stage, ZONE } from './stage.ts';
import { planUpkeep } from './upkeep.ts';

/**
 * Fills an empty database with the demo nursery: three seasons of an invented nursery, ending today, the same each time for the same day.
 * Only the nursery and its people are written directly, since no screen makes a nursery that is marked as a demo; all else goes through
 * the commands that people use.
 */
export async function loadDemo({ url, ownerUrl }: { url: string; ownerUrl: string }, now = new Date()): Promise<void> {
  const database = openDatabase(url, 2);
  try {
    const stage = new Stage(database, dayIn(now, ZONE));
    await addNursery(ownerUrl, stage);
    // The first of three whole seasons: late in the year this one counts, early in it the one before is the last.
    const thisYear = Number(stage.today.slice(0, 4));
    const lastYear = stage.today.slice(5) >= '07-01' ? thisYear : thisYear - 1;
    const firstDay = `${lastYear - 2}-02-10`;
    stage.setDay(firstDay);
    const grounds = await layGrounds(stage);
    const lots = new DemoLots();
    const mothers = await takeInOpening(stage, grounds, lots, firstDay);
    planPropagation(stage, grounds, lots, mothers, lastYear - 2, thisYear);
    planDeliveries(stage, grounds, lots, lastYear - 2, thisYear);
    planUpkeep(stage, grounds, lots, lastYear - 2, thisYear);
    await planGardens(stage, grounds, lastYear - 2, thisYear);
    planBands(stage, grounds, lots);
    planIncidents(stage, grounds, lots);
    await stage.play();
  } finally {
    await database.$disconnect();
  }
}

async function addNursery(ownerUrl: string, stage: Stage): Promise<void> {
  const owner = new pg.Client({ connectionString: ownerUrl });
  await owner.connect();
  try {
    const year = Number(stage.today.slice(0, 4));
    const seasonEndOn = stage.today.slice(5) > '10-31' ? `${year + 1}-10-31` : `${year}-10-31`;
    await owner.query(`INSERT INTO nursery (id, name, zone, region, units, season_end_on, demo) VALUES ($1, 'Sedge Hollow demo nursery', $2, 'IA', 'us', $3, true)`, [stage.nurseryId, ZONE, seasonEndOn]);
    for (const { name, email, role, password } of DEMO_SIGN_INS) {
      const personId = stage.chance.id();
      await owner.query('INSERT INTO person (id, email, name, password_hash) VALUES ($1, $2, $3, $4)', [personId, email, name, await hash(password)]);
      await owner.query('INSERT INTO membership (nursery_id, person_id, role) VALUES ($1, $2, $3)', [stage.nurseryId, personId, role]);
      stage.addPerson({ nurseryId: stage.nurseryId, personId, personName: name, email, role });
    }
  } finally {
    await owner.end();
  }
}
