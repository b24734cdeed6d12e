import pg from 'pg';

export interface DemoNursery {
  nurseryId: string;
  name: string;
  zone: string;
  region: string;
  seasonEndOn: string;
  people: { personId: string; name: string; email: string; role: string; passwordHash: string }[];
}

/** Writes the nursery that is marked as a demo, and its people: no screen makes such a one. */
export async function addDemoNursery(
  ownerUrl: string,
  { nurseryId, name, zone, region, seasonEndOn, people }: DemoNursery,
): Promise<void> {
  const owner = new pg.Client({ connectionString: ownerUrl });
  await owner.connect();
  try {
    await owner.query(
      `INSERT INTO nursery (id, name, zone, region, units, season_end_on, demo) VALUES ($1, $2, $3, $4, 'us', $5, true)`,
      [nurseryId, name, zone, region, seasonEndOn],
    );
    for (const person of people) {
      await owner.query('INSERT INTO person (id, email, name, password_hash) VALUES ($1, $2, $3, $4)', [
        person.personId,
        person.email,
        person.name,
        person.passwordHash,
      ]);
      await owner.query('INSERT INTO membership (nursery_id, person_id, role) VALUES ($1, $2, $3)', [
        nurseryId,
        person.personId,
        person.role,
      ]);
    }
  } finally {
    await owner.end();
  }
}
