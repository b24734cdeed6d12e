// How often a command goes to the database: what people enter all day must not cost more ways there than it needs.
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { gardenStory } from '../../support/gardens.ts';
import { openServer } from '../../support/nursery.ts';
import { cookieOf } from '../../support/session.ts';

/** With the session's, and without what begins and commits the transaction. */
const MOST = 7;
/** Commands that may send more even where nothing has to be planned anew, and why. */
const EXCEPTIONS: Record<string, { most: number; because: string }> = {
  treatLots: { most: 8, because: 'asks on which day of the nursery it was, and what grew out of the treated lots' },
  potUpLot: { most: 13, because: 'makes lots: codes, lots and holds are written between its entry and its movements' },
};
/** What planning anew adds: four statements that load, and up to three that write what changed. */
const PLANNING = 7;
const happenedOn = '2026-05-20';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let app: Awaited<ReturnType<typeof createApp>>;
let cookie: string;
let heard: string[] = [];
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database);
  app = await createApp({ databaseUrl: database.url, clock: server.clock.now, sends: (text) => void heard.push(text) });
});
afterAll(async () => {
  await app.close();
  await server.close();
  await database.drop();
});

/** Sends a command as a browser does; answers what went to the database meanwhile. */
async function statementsOf(name: string, body: object): Promise<string[]> {
  heard = [];
  const answer = await app.inject({
    method: 'POST',
    url: `/trpc/stock.${name}`,
    headers: { cookie },
    payload: { commandId: randomUUID(), body },
  });
  expect({ name, status: answer.statusCode, body: answer.statusCode === 200 ? '' : answer.body }).toEqual({
    name,
    status: 200,
    body: '',
  });
  expect(heard.filter((text) => text === 'BEGIN' || text === 'COMMIT')).toEqual(['BEGIN', 'COMMIT']);
  return heard.filter((text) => text !== 'BEGIN' && text !== 'COMMIT');
}

const loadsScope = (statements: string[]) => statements.some((text) => text.includes('judged_line'));
const asksForPlan = (statements: string[]) => statements.some((text) => text.includes('promises_need_plan'));

/** A story with a lot whose clock is reckoned, after which nothing has to be read that the server then keeps. */
async function storyOfLot() {
  const nursery = { ...(await server.addNursery()), close: async () => {} };
  cookie = await cookieOf(nursery, 'owner');
  const story = await gardenStory(nursery);
  const plantId = await story.addPlant({ name: 'Liatris aspera', code: 'LIAS', larvalHost: false });
  const lotId = await story.addLot({ plantId, units: 40 });
  const otherPlaceId = await story.addPlace();
  await story.lose(lotId, 1);
  await statementsOf('loseFromLot', { lotId, units: 1, cause: 'weather', happenedOn });
  return { ...story, plantId, lotId, otherPlaceId, entry: { lotId, placeId: story.placeId, happenedOn } };
}

/** Sends these one after another; answers how many statements went out for each that sent more than it may. */
async function beyond(
  asked: readonly [string, object][],
  more: number,
  look: (name: string, statements: string[]) => void,
) {
  const found: [string, number][] = [];
  for (const [name, body] of asked) {
    const statements = await statementsOf(name, body);
    look(name, statements);
    if (statements.length > (EXCEPTIONS[name]?.most ?? MOST) + more) found.push([name, statements.length]);
  }
  return found;
}

describe('a command of every day', () => {
  test('on plants that are promised goes to the database seven times, and loads no promise where none rests on what it changes', async () => {
    const { lotId, placeId, otherPlaceId, plantId, entry, order } = await storyOfLot();
    await order([{ units: 8, plantId }]);
    const asked: [string, object][] = [
      ['loseFromLot', { ...entry, units: 1, cause: 'weather' }],
      ['countLot', { ...entry, countedUnits: 37, countKind: 'counted' }],
      ['countLot', { ...entry, countedUnits: 36, countKind: 'estimated' }],
      ['moveLot', { ...entry, units: 1, toPlaceId: otherPlaceId }],
      ['moveMany', { lotIds: [lotId], toPlaceId: placeId, happenedOn }],
      ['observeMany', { lotIds: [lotId], kind: 'bloom', happenedOn }],
      ['sellFromLot', { ...entry, units: 1 }],
      ['giveFromLot', { ...entry, units: 1 }],
    ];
    const planless = new Set(['moveLot', 'moveMany', 'observeMany']);
    const takesPlants = new Set(['loseFromLot', 'sellFromLot', 'giveFromLot']);
    expect(
      await beyond(asked, 0, (name, statements) => {
        expect({ name, loads: loadsScope(statements) }).toEqual({ name, loads: false });
        if (planless.has(name)) expect({ name, asks: asksForPlan(statements) }).toEqual({ name, asks: false });
        if (takesPlants.has(name)) expect({ name, asks: asksForPlan(statements) }).toEqual({ name, asks: true });
      }),
    ).toEqual([]);
  });

  test('on plants that nobody asked for goes to the database as often as it may', async () => {
    const { lotId, otherPlaceId, containerId, entry } = await storyOfLot();
    const treatment = { product: 'Soap', applicator: 'Ada', target: 'aphids', treatedAt: '2026-05-20T12:00:00Z' };
    const asked: [string, object][] = [
      ['observeMany', { lotIds: [lotId], kind: 'root-ball', result: 'holds', happenedOn }],
      ['holdMany', { lotIds: [lotId], reason: 'inspector', happenedOn }],
      ['releaseLot', { lotId, reason: 'inspector', releaseReason: 'seen', happenedOn }],
      ['treatLots', { lotIds: [lotId], ...treatment }],
      ['potUpLot', { ...entry, into: [{ lotId: randomUUID(), containerId, placeId: otherPlaceId, units: 2 }] }],
    ];
    expect(
      await beyond(asked, 0, (name, statements) =>
        expect({ name, loads: loadsScope(statements) }).toEqual({ name, loads: false }),
      ),
    ).toEqual([]);
  });

  test('that changes what is promised plans anew, in a bounded number of statements', async () => {
    const { lotId, placeId, quarantineId, plantId, entry, order } = await storyOfLot();
    await order([{ units: 30, plantId }]);
    const asked: [string, object][] = [
      ['moveLot', { ...entry, units: 20, toPlaceId: quarantineId }],
      ['moveLot', { ...entry, placeId: quarantineId, units: 20, toPlaceId: placeId }],
      ['observeMany', { lotIds: [lotId], kind: 'root-ball', result: 'not-yet', readyOn: '2026-07-01', happenedOn }],
      ['observeMany', { lotIds: [lotId], kind: 'root-ball', result: 'holds', happenedOn }],
      ['holdMany', { lotIds: [lotId], reason: 'inspector', happenedOn }],
      ['releaseLot', { lotId, reason: 'inspector', releaseReason: 'seen', happenedOn }],
      ['loseFromLot', { ...entry, units: 20, cause: 'weather' }],
    ];
    expect(
      await beyond(asked, PLANNING, (name, statements) =>
        expect({ name, loads: loadsScope(statements) }).toEqual({ name, loads: true }),
      ),
    ).toEqual([]);
  });
});
