import { randomUUID } from 'node:crypto';
import type { TestNursery } from './nursery.ts';

/** Rows that a test's story begins with, written as the owner so that no command under test is needed to set up another. */
export function stockOf(nursery: Pick<TestNursery, 'nurseryId' | 'sql'>) {
  const { nurseryId, sql } = nursery;

  async function addPlant({
    name = 'Asclepias tuberosa',
    code = 'ASTU',
    rootHabit = 'taproot',
    larvalHost = true,
    dormantMonths = [10, 11, 12, 1, 2, 3, 4],
    lastEmergenceMd = '06-10' as string | null,
  } = {}) {
    const id = randomUUID();
    await sql(
      `INSERT INTO plant (nursery_id, id, code, scientific_name, taxon_rank, family, genus, specific_epithet, vernacular_name, root_habit, larval_host, dormant_months, last_emergence_md)
      VALUES ($1, $2, $3, $4, 'species', 'Apocynaceae', $5, $6, '', $7, $8, $9, $10)`,
      [
        nurseryId,
        id,
        code,
        name,
        name.split(' ')[0],
        name.split(' ')[1],
        rootHabit,
        larvalHost,
        dormantMonths,
        lastEmergenceMd,
      ],
    );
    return id;
  }

  async function addContainer({
    code = 'tall-1l',
    kind = 'pot',
    volumeMl = 1000 as number | null,
    depthMm = 200,
    cells = null as number | null,
  } = {}) {
    const id = randomUUID();
    await sql(
      `INSERT INTO container (nursery_id, id, code, name, kind, volume_ml, depth_mm, cells, standing) VALUES ($1, $2, $3, $3, $4, $5, $6, $7, 'assumed')`,
      [nurseryId, id, code, kind, volumeMl, depthMm, cells],
    );
    return id;
  }

  async function addPlace({ code = `B${randomUUID().slice(0, 8)}`, kind = 'bench', winterCover = false } = {}) {
    const id = randomUUID();
    await sql('INSERT INTO place (nursery_id, id, code, name, kind, winter_cover) VALUES ($1, $2, $3, $3, $4, $5)', [
      nurseryId,
      id,
      code,
      kind,
      winterCover,
    ]);
    return id;
  }

  async function addSource(
    plantId: string,
    { kind = 'bought-seed', seedZone = null as string | null, motherLotId = null as string | null } = {},
  ) {
    const id = randomUUID();
    await sql(
      `INSERT INTO source (nursery_id, id, code, plant_id, kind, seed_zone, mother_lot_id) VALUES ($1, $2, $3, $4, $5, $6, $7)`,
      [nurseryId, id, `S-${id.slice(0, 8)}`, plantId, kind, seedZone, motherLotId],
    );
    return id;
  }

  /** A lot on hand since `pottedOn`, entered from `opening`; its plant-by day is reckoned by the first command that touches it. */
  async function addLot({
    plantId,
    containerId,
    sourceId,
    placeId,
    units = 40,
    pottedOn = '2026-04-14',
    confinedOn = pottedOn as string | null,
    plantByOn = null as string | null,
    rootCheckedOn = pottedOn as string | null,
    readyOn = rootCheckedOn,
  }: {
    plantId: string;
    containerId: string;
    sourceId: string;
    placeId: string;
    units?: number;
    pottedOn?: string;
    confinedOn?: string | null;
    plantByOn?: string | null;
    rootCheckedOn?: string | null;
    readyOn?: string | null;
  }) {
    const id = randomUUID();
    const entryId = randomUUID();
    const [person] = await sql<{ person_id: string }>(
      'SELECT person_id FROM membership WHERE nursery_id = $1 LIMIT 1',
      [nurseryId],
    );
    await sql(
      `WITH n AS (UPDATE nursery SET version = version + 1 WHERE id = $1 RETURNING version),
      c AS (INSERT INTO command (nursery_id, id, version, name, person_id, input_hash, answer, recorded_at) SELECT $1, $2, version, 'set-up', $4, '', 'null', $3::date + interval '1 day' FROM n)
      INSERT INTO entry (nursery_id, id, version, kind, happened_on, recorded_at, person_id) SELECT $1, $2, version, 'opening', $3::date, $3::date + interval '1 day', $4 FROM n`,
      [nurseryId, entryId, pottedOn, person?.person_id],
    );
    await sql(
      `INSERT INTO lot (nursery_id, id, code, plant_id, source_id, container_id, created_entry_id, potted_on, confined_on, container_on, plant_by_on, ready_on, root_checked_on)
      VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $8, $10, $11, $12)`,
      [
        nurseryId,
        id,
        `L-${id.slice(0, 6)}`,
        plantId,
        sourceId,
        containerId,
        entryId,
        pottedOn,
        confinedOn,
        plantByOn,
        readyOn,
        rootCheckedOn,
      ],
    );
    await sql(
      `WITH a AS (
        INSERT INTO account (nursery_id, id, kind, lot_id, place_id, outside)
        VALUES ($1, account_key('place', $2, $3), 'place', $2::uuid, $3::uuid, NULL), ($1, account_key('outside', 'outside', 'opening'), 'outside', NULL, NULL, 'opening')
        ON CONFLICT DO NOTHING)
      INSERT INTO movement (nursery_id, entry_id, line, from_account_id, to_account_id, from_units, to_units)
      VALUES ($1, $4, 0, account_key('outside', 'outside', 'opening'), account_key('place', $2, $3), $5, $5)`,
      [nurseryId, id, placeId, entryId, units],
    );
    return id;
  }

  /** One lot of one plant with all that it needs, for tests that are about something else. */
  async function addReadyLot(options: { units?: number; pottedOn?: string } = {}) {
    const unique = randomUUID().slice(0, 8);
    const plantId = await addPlant({ name: `Asclepias proba-${unique}`, code: codeFrom(unique) });
    const containerId = await addContainer({ code: `pot-${unique}` });
    const placeId = await addPlace();
    const sourceId = await addSource(plantId);
    const lotId = await addLot({ plantId, containerId, sourceId, placeId, ...options });
    return { plantId, containerId, placeId, sourceId, lotId };
  }

  /** As `addReadyLot`, of a plant with a name of its own; answers the lot alone. */
  async function addReadyLotOf(name: string, code: string) {
    const plantId = await addPlant({ name, code });
    return addLot({
      plantId,
      containerId: await addContainer({ code: `pot-${code}` }),
      sourceId: await addSource(plantId),
      placeId: await addPlace(),
    });
  }

  const unitsOf = async (lotId: string) =>
    (
      await sql<{ units: number }>(
        `SELECT coalesce(sum(units), 0)::int AS units FROM account WHERE nursery_id = $1 AND lot_id = $2 AND kind = 'place'`,
        [nurseryId, lotId],
      )
    )[0]?.units ?? 0;

  return { addPlant, addContainer, addPlace, addSource, addLot, addReadyLot, addReadyLotOf, unitsOf };
}

/** Four capital letters from hexadecimal digits, for plant codes that must not clash. */
const codeFrom = (hex: string) =>
  [...hex]
    .slice(0, 5)
    .map((digit) => String.fromCharCode(65 + Number.parseInt(digit, 16)))
    .join('');
