// The nursery that the model is compared with: the real procedures, and what the database holds after each of them.
import { expect } from 'vitest';
import { readFreshPlan } from '../support/fresh-plan.ts';
import { idOf, type openServer, sent } from '../support/nursery.ts';
import { stockOf } from '../support/stock.ts';
import { type Item, Ledger, planted } from './ledger.ts';
import { reservedBy, supplyOf } from './promising.ts';
import { MODEL_STAGES, stageOf } from './stages.ts';

export const TODAY = '2026-05-20';

export type World = Awaited<ReturnType<typeof openWorld>>;

interface Stored {
  units: Record<string, number>;
  holds: string[];
  seedGrams: number;
  stages: Record<string, { position: number; begunOn: string }>;
  orders: Record<string, { dueOn: string; isOpen: boolean }>;
  ranking: string[];
  reservations: { lineId: string; lotId: string; units: number; pinned: boolean }[];
}

const pinnedOf = (pins: ReadonlyMap<string, number>, lotIds: readonly string[]) =>
  [...pins].reduce((sum, [pair, units]) => sum + (lotIds.includes(pair.slice(pair.indexOf('/') + 1)) ? units : 0), 0);

/** A nursery with one plant, two containers and four places, one of them for quarantine; and the model that begins with it. */
export async function openWorld(server: Awaited<ReturnType<typeof openServer>>) {
  const nursery = await server.addNursery();
  const { nurseryId, sql, as } = nursery;
  const stock = stockOf(nursery);
  const plantId = await stock.addPlant();
  const containerIds: Record<Item, string> = {
    small: await stock.addContainer({ code: 'small' }),
    big: await stock.addContainer({ code: 'big', volumeMl: 4000 }),
  };
  const sourceId = await stock.addSource(plantId);
  const placeIds = [
    await stock.addPlace(),
    await stock.addPlace(),
    await stock.addPlace({ kind: 'cold-frame' }),
    await stock.addPlace({ kind: 'quarantine' }),
  ];
  await sql(
    `INSERT INTO pot_life_rule (nursery_id, id, basis, span, plant_id, container_id, standing) VALUES ($1, gen_random_uuid(), 'container', 'P20D', $2, $3, 'assumed')`,
    [nurseryId, plantId, containerIds.big],
  );
  const versionId = idOf('version');
  await as('owner').propagation.addProtocol(
    sent(
      {
        protocolId: idOf('protocol'),
        versionId,
        plantId,
        method: 'seed' as const,
        startUnit: 'cell' as const,
        stages: MODEL_STAGES.map(({ kind, days }) => ({
          kind,
          shortDays: days,
          usualDays: days,
          longDays: days,
          share: 0.8,
        })),
      },
      idOf('add protocol'),
    ),
  );
  const clientId = idOf('client');
  const siteId = idOf('site');
  await sql(`INSERT INTO client (nursery_id, id, name) VALUES ($1, $2, 'Fen Hollow')`, [nurseryId, clientId]);
  await sql(`INSERT INTO site (nursery_id, id, client_id, name) VALUES ($1, $2, $3, 'South slope')`, [
    nurseryId,
    siteId,
    clientId,
  ]);

  async function stored(): Promise<Stored> {
    const [row] = await sql<{ stored: Stored }>(
      `SELECT json_build_object(
      'units', (SELECT coalesce(json_object_agg(coalesce(lot_id, batch_id) || CASE kind WHEN 'place' THEN '@' || place_id ELSE '>' || line_id END, units), '{}') FROM account WHERE nursery_id = $1 AND kind <> 'outside' AND units <> 0),
      'holds', (SELECT coalesce(json_agg(lot_id || ' ' || reason ORDER BY 1), '[]') FROM (SELECT lot_id, reason FROM hold WHERE nursery_id = $1 AND released_on IS NULL ORDER BY lot_id, reason) h),
      'seedGrams', coalesce((SELECT sum(grams)::float8 FROM seed_store WHERE nursery_id = $1), 0),
      'stages', (SELECT coalesce(json_object_agg(id, json_build_object('position', stage_position, 'begunOn', stage_begun_on)), '{}') FROM batch WHERE nursery_id = $1 AND stage_position IS NOT NULL),
      'orders', (SELECT coalesce(json_object_agg(id, json_build_object('dueOn', due_on, 'isOpen', state = 'open')), '{}') FROM garden_order WHERE nursery_id = $1),
      'ranking', (SELECT coalesce(json_agg(id ORDER BY rank), '[]') FROM order_line WHERE nursery_id = $1),
      'reservations', (SELECT coalesce(json_agg(json_build_object('lineId', line_id, 'lotId', supply_id, 'units', units, 'pinned', pinned)), '[]') FROM reservation WHERE nursery_id = $1)) AS stored`,
      [nurseryId],
    );
    if (!row) throw new Error('nothing was stored');
    return row.stored;
  }

  /**
   * Compares everything that the model knows. `concerned` are the lots and lines of the last step: of all others no pin may have moved. Among the lots
   * that it `carries` pins may have moved, but none may be lost.
   */
  async function compare(ledger: Ledger, concerned: ReadonlySet<string>, carries?: readonly string[]): Promise<void> {
    const now = await stored();
    expect({
      units: now.units,
      holds: now.holds,
      seedGrams: now.seedGrams,
      stages: now.stages,
      orders: now.orders,
      ranking: now.ranking,
    }).toEqual({
      units: Object.fromEntries(
        [...ledger.units].filter(([account, units]) => units > 0 && !account.startsWith('planted>')),
      ),
      holds: [...ledger.lots.values()]
        .flatMap(({ id, holds }) => [...holds.keys()].map((reason) => `${id} ${reason}`))
        .sort(),
      seedGrams: ledger.seedGrams,
      stages: Object.fromEntries(
        [...ledger.batches.keys()].flatMap((id) => {
          const { current } = stageOf(ledger, id);
          return current ? [[id, { position: current.position, begunOn: current.on }]] : [];
        }),
      ),
      orders: Object.fromEntries([...ledger.orders.values()].map(({ id, dueOn, isOpen }) => [id, { dueOn, isOpen }])),
      ranking: ledger.ranking,
    });

    const pins = new Map(
      now.reservations.filter(({ pinned }) => pinned).map(({ lineId, lotId, units }) => [`${lineId}/${lotId}`, units]),
    );
    for (const pair of new Set([...pins.keys(), ...ledger.pins.keys()])) {
      const [lineId = '', lotId = ''] = pair.split('/');
      if (!concerned.has(lineId) && !concerned.has(lotId))
        expect({ pair, pinned: pins.get(pair) }).toEqual({ pair, pinned: ledger.pins.get(pair) });
    }
    if (carries)
      expect(pinnedOf(pins, carries), 'pins got lost on the way').toBe(
        Math.min(
          pinnedOf(ledger.pins, carries),
          carries.reduce((sum, lotId) => sum + supplyOf(ledger, lotId), 0),
        ),
      );
    ledger.pins = pins;

    const held = new Map<string, number>();
    const promised = new Map<string, number>();
    for (const { lineId, lotId, units } of now.reservations) {
      held.set(lineId, (held.get(lineId) ?? 0) + units);
      promised.set(lotId, (promised.get(lotId) ?? 0) + units);
      expect(ledger.lot(lotId).item).toBe(ledger.line(lineId).item);
    }
    const twice = [...promised].filter(([lotId, units]) => units > supplyOf(ledger, lotId));
    expect(twice, 'more is promised of a lot than stands there').toEqual([]);
    const wanted = [...reservedBy(ledger)].filter(([, units]) => units > 0);
    expect(Object.fromEntries(held)).toEqual(Object.fromEntries(wanted));
    const plan = await readFreshPlan(nursery);
    expect(plan.stored, 'what is stored is not what a fresh plan would be').toEqual(plan.fresh);
  }

  /** What the screens say of the orders at the end of a course. */
  async function compareScreens(ledger: Ledger): Promise<void> {
    const reserved = reservedBy(ledger);
    for (const order of ledger.orders.values()) {
      const page = await as('viewer').promises.readOrder({ orderId: order.id });
      expect(
        page.lineRows.map(({ id, reservedUnits, stagedUnits, deliveredUnits }) => ({
          id,
          reservedUnits,
          stagedUnits,
          deliveredUnits,
        })),
      ).toEqual(
        expect.arrayContaining(
          ledger.linesOf(order.id).map(({ id }) => ({
            id,
            reservedUnits: reserved.get(id) ?? 0,
            stagedUnits: ledger.stagedFor(id),
            deliveredUnits: ledger.of(planted(id)),
          })),
        ),
      );
    }
  }

  return {
    ledger: new Ledger(placeIds, placeIds[3] ?? ''),
    plantId,
    containerIds,
    sourceId,
    versionId,
    clientId,
    siteId,
    procedures: as('owner'),
    compare,
    compareScreens,
    sent,
  };
}
