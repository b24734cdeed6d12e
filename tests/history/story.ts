// A nursery at which forty people work at once, through two servers as they do when there is a second one.
import { createDatabase } from '../support/database.ts';
import { readFreshPlan } from '../support/fresh-plan.ts';
import { idOf, openServer, sent } from '../support/nursery.ts';
import { stockOf } from '../support/stock.ts';

export const CLIENTS = 40;
export const TODAY = '2026-05-20';

export type Story = Awaited<ReturnType<typeof openStory>>;

export async function openStory() {
  const database = await createDatabase();
  const servers = [await openServer(database), await openServer(database)] as const;
  const nursery = await servers[0].addNursery();
  const { nurseryId, sql } = nursery;
  const stock = stockOf(nursery);
  const plantId = await stock.addPlant();
  const containerId = await stock.addContainer();
  const placeIds = [
    await stock.addPlace({ code: 'B1' }),
    await stock.addPlace({ code: 'B2' }),
    await stock.addPlace({ code: 'Q1', kind: 'quarantine' }),
  ] as const;
  const sourceId = await stock.addSource(plantId);
  const clientId = idOf('client');
  const siteId = idOf('site');
  await nursery.as('owner').clients.addClient(sent({ clientId, name: 'Fen Hollow' }));
  await nursery.as('owner').clients.addSite(sent({ siteId, clientId, name: 'South slope' }));
  const procedures = servers.map((server) => server.serve(nursery.people)('owner'));

  return {
    database,
    nurseryId,
    sql,
    plantId,
    containerId,
    placeIds,
    sourceId,
    clientId,
    siteId,
    unitsOf: stock.unitsOf,
    addLot: (units: number) => stock.addLot({ plantId, containerId, sourceId, placeId: placeIds[0], units }),
    readFreshPlan: () => readFreshPlan(nursery),
    /** Every other person's phone talks to the other server. */
    by: (person: number) => procedures[person % 2] ?? nursery.as('owner'),
    orderOf: (orderId: string, lineId: string, units: number) =>
      sent({
        orderId,
        clientId,
        siteId,
        kind: 'installation' as const,
        dueOn: '2026-06-10',
        lines: [{ lineId, plantId, containerId, units }],
      }),
    close: async () => {
      for (const server of servers) await server.close();
      await database.drop();
    },
  };
}

const MOST_TRIES = 10;

/**
 * The code an attempt ended with; what nobody expects fails the test. Where the answer is that nobody knows, because so many were waiting, it
 * is sent again under the same id, as an outbox does.
 */
export async function outcomeOf(send: () => Promise<unknown>): Promise<{ code: string; answer?: unknown }> {
  for (let tried = 1; ; tried++) {
    try {
      return { code: 'done', answer: await send() };
    } catch (error) {
      const code = (error as { cause?: { code?: string } }).cause?.code;
      if (code === 'outcome-unknown' && tried < MOST_TRIES) continue;
      if (code === undefined || code === 'fault' || code === 'outcome-unknown') throw error;
      return { code };
    }
  }
}

export const people = Array.from({ length: CLIENTS }, (_, person) => person);
