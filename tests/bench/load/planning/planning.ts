// What a large plan is made from, added to a generated nursery: plants with protocols and sources of their own, expected in weeks of a year.
import { addDays, mondayOf, weekStart } from '@rootclock/domain';
import type pg from 'pg';
import { streamOf } from '../chance.ts';
import { TODAY } from '../grounds.ts';

export interface PlannedDemand {
  plants: number;
  weeks: number;
  demands: number;
}

const STAGES = ['stratification', 'sowing', 'emergence', 'growing-on', 'hardening'] as const;
/** The first week in which anything is wanted: before it little could be ready. */
const FIRST_WEEK = 16;

export async function loadPlanning(
  client: pg.Client,
  nurseryId: string,
  { plants, weeks, seed }: { plants: number; weeks: number; seed: number },
): Promise<PlannedDemand> {
  const chance = streamOf(seed, 'planning');
  const { rows: containers } = await client.query<{ id: string; code: string }>(
    'SELECT id::text, code FROM container WHERE nursery_id = $1',
    [nurseryId],
  );
  const trays = containers.filter(({ code }) => ['plug-72', 'plug-50', 'plug-128'].includes(code));
  const pots = containers.filter(({ code }) => ['pot-9cm', 'pot-1l', 'tall-1l'].includes(code));
  const usual = () => [0, 0, chance.whole(7, 25), chance.whole(40, 80), 10];
  let demands = 0;
  for (let at = 0; at < plants; at += 1) {
    const [plantId, sourceId, protocolId, versionId] = [chance.id(), chance.id(), chance.id(), chance.id()];
    const pot = chance.pick(pots).id;
    const code = `Z${[...String(at).padStart(3, '0')].map((digit) => String.fromCharCode(65 + Number(digit))).join('')}`;
    await client.query(
      `INSERT INTO plant (nursery_id, id, code, scientific_name, taxon_rank, genus, specific_epithet, root_habit, dormant_months) VALUES ($1, $2, $3, $4, 'species', 'Planta', $5, 'fibrous', '{11,12,1,2}')`,
      [nurseryId, plantId, code, `Planta ${code.toLowerCase()}`, code.toLowerCase()],
    );
    await client.query(
      `INSERT INTO source (nursery_id, id, code, plant_id, kind, purity, seeds_per_gram, gathered_on) VALUES ($1, $2, $3, $4, 'seed-collection', 0.9, 400, '2025-09-01')`,
      [nurseryId, sourceId, `${code}-25-001`, plantId],
    );
    await client.query(`INSERT INTO protocol (nursery_id, id, plant_id, method) VALUES ($1, $2, $3, 'seed')`, [
      nurseryId,
      protocolId,
      plantId,
    ]);
    await client.query(
      `INSERT INTO protocol_version (nursery_id, id, protocol_id, number, made_on, seeds_per_cell, start_unit, start_container_id, target_container_id, standing) VALUES ($1, $2, $3, 1, '2025-01-01', 2, 'cell', $4, $5, 'assumed')`,
      [nurseryId, versionId, protocolId, chance.pick(trays).id, pot],
    );
    const days = usual();
    for (const [position, kind] of STAGES.entries()) {
      const day = days[position] ?? 0;
      await client.query(
        `INSERT INTO protocol_stage (nursery_id, version_id, position, kind, short_days, usual_days, long_days, duration_standing, share, share_standing) VALUES ($1, $2, $3, $4, $5, $6, $7, 'assumed', $8, 'assumed')`,
        [
          nurseryId,
          versionId,
          position,
          kind,
          Math.round(day * 0.7),
          day,
          Math.round(day * 1.4),
          kind === 'emergence' ? 0.5 + chance.share() * 0.4 : kind === 'growing-on' ? 0.9 : 1,
        ],
      );
    }
    await client.query('UPDATE protocol SET current_version_id = $3 WHERE nursery_id = $1 AND id = $2', [
      nurseryId,
      protocolId,
      versionId,
    ]);
    for (let nth = chance.whole(1, 4); nth > 0; nth -= 1) {
      const wantedOn = addDays(mondayOf(weekStart(TODAY), chance.whole(FIRST_WEEK, weeks - 1)), chance.whole(0, 6));
      await client.query(
        'INSERT INTO expected_demand (nursery_id, id, plant_id, container_id, wanted_on, units, unit_value_minor) VALUES ($1, $2, $3, $4, $5, $6, $7)',
        [nurseryId, chance.id(), plantId, pot, wantedOn, chance.whole(20, 200), chance.whole(300, 1500)],
      );
      demands += 1;
    }
  }
  return { plants, weeks, demands };
}

/** Gives all places together so much bench, on one of them, since what is measured further in does not count twice. */
export async function measureBenches(client: pg.Client, nurseryId: string, capacityM2: number): Promise<void> {
  await client.query('UPDATE place SET bench_area_m2 = NULL WHERE nursery_id = $1', [nurseryId]);
  await client.query(
    `UPDATE place SET bench_area_m2 = $2 WHERE nursery_id = $1 AND id = (SELECT id FROM place WHERE nursery_id = $1 AND parent_id IS NULL ORDER BY code LIMIT 1)`,
    [nurseryId, Math.round(capacityM2 * 100) / 100],
  );
}
