import { randomUUID } from 'node:crypto';
import { openNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';
import { createDatabase } from '../../support/database.ts';

/** A nursery with a milkweed lot of forty on one bench, a second bench, a bed, and pots to go on to; and what to look at after. */
export async function openLotStory() {
  const database = await createDatabase();
  const nursery = await openNursery(database);
  const stock = stockOf(nursery);
  const { nurseryId, sql } = nursery;

  let begun = 0;

  async function begin(options: { units?: number; pottedOn?: string } = {}) {
    begun += 1;
    const suffix = `${begun}`;
    const letter = (n: number) => String.fromCharCode(65 + (n % 26));
    const code = `T${letter(begun / 676)}${letter(begun / 26)}${letter(begun)}`;
    const plantId = await stock.addPlant({ name: `Asclepias species${suffix}`, code });
    const containerId = await stock.addContainer({ code: `pot-${suffix}` });
    const bigPotId = await stock.addContainer({ code: `big-${suffix}`, volumeMl: 4000 });
    const groundId = await stock.addContainer({ code: `ground-${suffix}`, kind: 'ground', volumeMl: null });
    const benchId = await stock.addPlace({ code: `B-${suffix}` });
    const yardId = await stock.addPlace({ code: `Y-${suffix}`, kind: 'yard' });
    const bedId = await stock.addPlace({ code: `N-${suffix}`, kind: 'nursery-bed' });
    const sourceId = await stock.addSource(plantId);
    const lotId = await stock.addLot({ plantId, containerId, sourceId, placeId: benchId, ...options });
    return { plantId, containerId, bigPotId, groundId, benchId, yardId, bedId, sourceId, lotId };
  }

  /** Units of a lot by place code's first letter: B bench, Y yard, N nursery bed. */
  async function standing(lotId: string): Promise<Record<string, number>> {
    const rows = await sql<{ letter: string; units: number }>(
      `SELECT left(w.code, 1) AS letter, a.units FROM account a JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
      WHERE a.nursery_id = $1 AND a.lot_id = $2 AND a.units > 0 ORDER BY w.code`,
      [nurseryId, lotId],
    );
    return Object.fromEntries(rows.map(({ letter, units }) => [letter, units]));
  }

  const lotRow = async (lotId: string) =>
    (
      await sql<{
        plant_id: string;
        confined_on: string | null;
        container_on: string | null;
        potted_on: string;
        closed_on: string | null;
        root_checked_on: string | null;
        ready_on: string | null;
        count_kind: string;
      }>(
        `SELECT plant_id, confined_on::text, container_on::text, potted_on::text, closed_on::text, root_checked_on::text, ready_on::text, count_kind FROM lot WHERE nursery_id = $1 AND id = $2`,
        [nurseryId, lotId],
      )
    )[0];

  const openHolds = async (lotId: string) =>
    (
      await sql<{ reason: string }>(
        'SELECT reason FROM hold WHERE nursery_id = $1 AND lot_id = $2 AND released_on IS NULL ORDER BY reason',
        [nurseryId, lotId],
      )
    ).map(({ reason }) => reason);

  const unitsOutside = async (entryId: string, outside: string) =>
    (
      await sql<{ units: number }>(
        `SELECT coalesce(sum(CASE WHEN t.outside = $3 THEN m.from_units ELSE m.to_units END), 0)::int AS units FROM movement m
      JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
      WHERE m.nursery_id = $1 AND m.entry_id = $2 AND $3 IN (f.outside, t.outside)`,
        [nurseryId, entryId, outside],
      )
    )[0]?.units;

  /** An open order of a client with one line for the item. */
  async function promise(
    { plantId, containerId }: { plantId: string; containerId: string },
    units: number,
    lotId?: string,
  ) {
    const [clientId, orderId, lineId] = [randomUUID(), randomUUID(), randomUUID()];
    await sql(`INSERT INTO client (nursery_id, id, name) VALUES ($1, $2, 'Invented client')`, [nurseryId, clientId]);
    await sql(
      `INSERT INTO garden_order (nursery_id, id, code, client_id, kind, due_on) VALUES ($1, $2, $3, $4, 'pickup', '2026-06-01')`,
      [nurseryId, orderId, `O-${orderId.slice(0, 6)}`, clientId],
    );
    await sql(
      `INSERT INTO order_line (nursery_id, id, order_id, rank, plant_id, container_id, units)
      SELECT $1, $2, $3, coalesce(max(rank), 0) + 1, $4, $5, $6 FROM order_line WHERE nursery_id = $1`,
      [nurseryId, lineId, orderId, plantId, containerId, units],
    );
    if (lotId)
      await sql('INSERT INTO reservation (nursery_id, line_id, supply_id, lot_id, units) VALUES ($1, $2, $3, $3, $4)', [
        nurseryId,
        lineId,
        lotId,
        units,
      ]);
    return { clientId, orderId, lineId };
  }

  const close = async () => {
    await nursery.close();
    await database.drop();
  };
  return { ...nursery, stock, begin, standing, lotRow, openHolds, unitsOutside, promise, close };
}

export type LotStory = Awaited<ReturnType<typeof openLotStory>>;
export const newId = () => randomUUID();
