import { randomUUID } from 'node:crypto';
import { sent, type TestNursery } from './nursery.ts';
import { stockOf } from './stock.ts';

/** What a line of a test asks for; everything that is left out is plain. */
export interface Asked {
  units: number;
  plantId?: string;
  containerId?: string;
  bedId?: string | null;
  seedZone?: string | null;
  wildType?: boolean;
  untreated?: boolean;
  alternatives?: { plantId: string; containerId: string; penalty?: number }[];
}

/** A client with a site, one plant in one container at one place, and short ways to order, look and work; orders go through the real procedures. */
export async function gardenStory(nursery: TestNursery) {
  const { nurseryId, sql, as } = nursery;
  const stock = stockOf(nursery);
  const plantId = await stock.addPlant();
  const containerId = await stock.addContainer();
  const placeId = await stock.addPlace({ code: 'BENCH' });
  const quarantineId = await stock.addPlace({ code: 'QUAR', kind: 'quarantine' });
  const sourceId = await stock.addSource(plantId, { kind: 'seed-collection' });
  const clientId = randomUUID();
  const siteId = randomUUID();
  await as('grower').clients.addClient(sent({ clientId, name: 'Fen Hollow' }));
  await as('grower').clients.addSite(sent({ siteId, clientId, name: 'South slope' }));

  /** A lot of the story's plant; its own rule makes it leave its pot on `plantByOn`. */
  async function addLot({
    plantByOn = null as string | null,
    ...options
  }: {
    units?: number;
    pottedOn?: string;
    plantByOn?: string | null;
    rootCheckedOn?: string | null;
    readyOn?: string;
    plantId?: string;
    containerId?: string;
    sourceId?: string;
    placeId?: string;
  } = {}) {
    const pottedOn = options.pottedOn ?? '2026-04-14';
    const lotId = await stock.addLot({
      plantId,
      containerId,
      placeId,
      ...options,
      sourceId: options.sourceId ?? (options.plantId ? await stock.addSource(options.plantId) : sourceId),
      plantByOn,
    });
    if (plantByOn !== null) {
      await sql(
        `INSERT INTO pot_life_rule (nursery_id, id, basis, span, lot_id, standing) VALUES ($1, $2, 'container', 'P' || ($3::date - $4::date) || 'D', $5, 'assumed')`,
        [nurseryId, randomUUID(), plantByOn, pottedOn, lotId],
      );
      // The stored rules are read again only when their version moves.
      await sql('UPDATE nursery SET rules_version = rules_version + 1 WHERE id = $1', [nurseryId]);
      await sql(
        `UPDATE lot SET plant_by_state = 'limit-only', limit_on = plant_by_on WHERE nursery_id = $1 AND id = $2`,
        [nurseryId, lotId],
      );
    }
    return lotId;
  }

  async function order(
    lines: Asked[],
    {
      dueOn = '2026-06-01',
      kind = 'installation' as 'installation' | 'pickup' | 'contract-growing',
      client = clientId,
      site = siteId as string | null,
    } = {},
  ) {
    const orderId = randomUUID();
    const rows = lines.map((line) => ({ lineId: randomUUID(), plantId, containerId, ...line }));
    const { code } = await as('grower').orders.addOrder(
      sent({ orderId, clientId: client, siteId: kind === 'installation' ? site : null, kind, dueOn, lines: rows }),
    );
    return { orderId, code, lineIds: rows.map(({ lineId }) => lineId), lineId: rows[0]?.lineId ?? '' };
  }

  const read = (orderId: string) => as('viewer').promises.readOrder({ orderId });
  /** Units reserved by line, `lot: units` with an asterisk where pinned. */
  async function heldBy(lineId: string): Promise<Record<string, number>> {
    const rows = await sql<{ supply: string; pinned: boolean; units: number }>(
      'SELECT supply_id::text AS supply, pinned, units FROM reservation WHERE nursery_id = $1 AND line_id = $2',
      [nurseryId, lineId],
    );
    return Object.fromEntries(rows.map(({ supply, pinned, units }) => [pinned ? `${supply}*` : supply, units]));
  }
  const lineOf = async (orderId: string, lineId: string) => {
    const line = (await read(orderId)).lineRows.find(({ id }) => id === lineId);
    if (!line) throw new Error('the order has no such line');
    return line;
  };
  const lose = (lotId: string, units: number) =>
    as('crew').stock.loseFromLot(sent({ lotId, units, cause: 'weather' as const, happenedOn: '2026-05-20' }));
  const pull = (
    orderId: string,
    rows: { lineId: string; lotId: string; units: number; placeId?: string }[],
    more: { confirmed?: boolean } = {},
  ) =>
    as('crew').gardens.pullForOrder(
      sent({ orderId, happenedOn: '2026-05-20', rows: rows.map((row) => ({ placeId, ...row })), ...more }),
    );

  return {
    ...stock,
    plantId,
    containerId,
    placeId,
    quarantineId,
    sourceId,
    clientId,
    siteId,
    addLot,
    order,
    read,
    heldBy,
    lineOf,
    lose,
    pull,
  };
}

export type GardenStory = Awaited<ReturnType<typeof gardenStory>>;
