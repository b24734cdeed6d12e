import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkLaws } from '../../apps/server/src/db/check.ts';
import { idOf, sent } from '../support/nursery.ts';
import { replay } from './replay.ts';
import { CLIENTS, openStory, outcomeOf, people, type Story, TODAY } from './story.ts';

const KINDS = [
  'order',
  'pin',
  'pull',
  'pull',
  'plant',
  'return',
  'lose',
  'sell',
  'count',
  'split',
  'move',
  'hold',
  'release',
  'changeDay',
  'cancel',
  'reverse',
] as const;

interface Deed {
  kind: (typeof KINDS)[number];
  lot: number;
  place: number;
  units: number;
  /** Sent twice at the same moment under one id, as an impatient thumb does. */
  twice: boolean;
}

const deed: fc.Arbitrary<Deed> = fc.record({
  kind: fc.constantFrom(...KINDS),
  lot: fc.nat({ max: 2 }),
  place: fc.nat({ max: 2 }),
  units: fc.integer({ min: 1, max: 6 }),
  twice: fc.boolean(),
});
const DEEDS = 8;

let story: Story;
let lotIds: string[];
/** Answers of commands that were acknowledged, by command id; a deed that was sent twice has two. */
const acknowledged = new Map<string, unknown[]>();
const codes = new Map<string, number>();

beforeAll(async () => {
  story = await openStory();
  lotIds = [await story.addLot(80), await story.addLot(80), await story.addLot(80)];
  const days = fc.sample(fc.array(deed, { minLength: DEEDS, maxLength: DEEDS }), CLIENTS);
  await Promise.all(people.map((person) => work(person, days[person] ?? [])));
}, 240_000);
afterAll(() => story.close());

/** What one person does, one thing after the other, while all the others do theirs. */
async function work(person: number, deeds: Deed[]): Promise<void> {
  const name = String(person);
  const orderId = idOf('order', name);
  const lineId = idOf('line', name);
  const client = story.by(person);
  let lastEntry: string | null = null;
  const first = { ...story.orderOf(orderId, lineId, 6), commandId: idOf('first', name) };
  await outcomeOf(() => client.orders.addOrder(first));
  acknowledged.set(idOf('first', name), []);
  for (const [at, { kind, lot, place, units, twice }] of deeds.entries()) {
    const commandId = idOf('deed', name, String(at));
    const lotId = lotIds[lot] ?? '';
    const placeId = story.placeIds[place] ?? '';
    const entry = { happenedOn: TODAY };
    const send = {
      order: () =>
        client.orders.addOrder({
          ...story.orderOf(idOf('order', name, String(at)), idOf('line', name, String(at)), units),
          commandId,
        }),
      pin: () => client.promises.pinReservation(sent({ lineId, supplyId: lotId, units }, commandId)),
      pull: () =>
        client.gardens.pullForOrder(
          sent({ ...entry, orderId, rows: [{ lineId, lotId, placeId: story.placeIds[0], units }] }, commandId),
        ),
      plant: () =>
        client.gardens.plantOrder(
          sent(
            { ...entry, orderId, rows: [{ lineId, lotId, units: 1, extra: { from: 'found' as const, units } }] },
            commandId,
          ),
        ),
      return: () =>
        client.gardens.returnFromOrder(
          sent(
            {
              ...entry,
              orderId,
              cause: 'mishandled' as const,
              rows: [{ lineId, lotId, returnedUnits: 1, lostUnits: 1 }],
            },
            commandId,
          ),
        ),
      lose: () =>
        client.stock.loseFromLot(
          sent({ ...entry, lotId, placeId: story.placeIds[0], units, cause: 'weather' as const }, commandId),
        ),
      sell: () => client.stock.sellFromLot(sent({ ...entry, lotId, placeId: story.placeIds[0], units }, commandId)),
      count: () =>
        client.stock.countLot(
          sent({ ...entry, lotId, placeId, countedUnits: units * 5, countKind: 'counted' as const }, commandId),
        ),
      split: () =>
        client.stock.splitLot(
          sent(
            {
              ...entry,
              lotId,
              placeId: story.placeIds[0],
              into: [{ lotId: idOf('split', commandId), placeId, units }],
            },
            commandId,
          ),
        ),
      move: () =>
        client.stock.moveLot(
          sent({ ...entry, lotId, placeId: story.placeIds[0], units, toPlaceId: placeId }, commandId),
        ),
      hold: () => client.stock.holdMany(sent({ ...entry, lotIds: [lotId], reason: 'inspector' as const }, commandId)),
      release: () =>
        client.stock.releaseLot(
          sent({ ...entry, lotId, reason: 'inspector' as const, releaseReason: 'passed' }, commandId),
        ),
      changeDay: () => client.promises.changeDay(sent({ orderId, dueOn: '2026-06-15' }, commandId)),
      cancel: () => client.gardens.cancelOrder(sent({ ...entry, orderId, placeId }, commandId)),
      reverse: () => client.stock.reverseEntry(sent({ entryId: lastEntry ?? commandId }, commandId)),
    }[kind];
    const outcomes = await Promise.all((twice ? [send, send] : [send]).map(outcomeOf));
    for (const { code } of outcomes) codes.set(code, (codes.get(code) ?? 0) + 1);
    const done = outcomes.filter(({ code }) => code === 'done').map(({ answer }) => answer);
    if (done.length === 0) continue;
    acknowledged.set(commandId, done);
    if ('entryId' in (done[0] as object)) lastEntry = commandId;
  }
}

describe(`after a day on which ${CLIENTS} people did ${DEEDS} things each, all at once`, () => {
  it('much was done and much was refused', () => {
    expect(codes.get('done')).toBeGreaterThan(CLIENTS * 2);
    expect([...codes.keys()].filter((code) => code !== 'done').length).toBeGreaterThan(3);
  });

  it('the movements, replayed as they were recorded, make the balances that are stored and never less than nothing', async () => {
    const replayed = await replay(story);
    expect(replayed).toMatchObject({ negative: [], different: [] });
    expect(replayed.entries).toBeGreaterThan(50);
  });

  it('whatever was sent twice got the same answer and took effect once', async () => {
    const differing = [...acknowledged].filter(
      ([, answers]) => answers.length === 2 && !isDeepStrictEqual(answers[0], answers[1]),
    );
    expect(differing).toEqual([]);
    expect([...acknowledged.values()].filter((answers) => answers.length === 2).length).toBeGreaterThan(10);
  });

  it('the log holds each acknowledged command once and no other', async () => {
    const logged = await story.sql<{ id: string }>(
      `SELECT id::text FROM command WHERE nursery_id = $1 AND name NOT IN ('set-up', 'roll-day', 'addClient', 'addSite')`,
      [story.nurseryId],
    );
    expect(logged.map(({ id }) => id).sort()).toEqual([...acknowledged.keys()].sort());
  });

  it('the commands are numbered without a gap', async () => {
    const [numbers] = await story.sql<{ first: number; last: number; all: number; version: number }>(
      `
      SELECT min(c.version)::int AS first, max(c.version)::int AS last, count(DISTINCT c.version)::int AS all, n.version::int AS version
        FROM command c JOIN nursery n ON n.id = c.nursery_id WHERE c.nursery_id = $1 GROUP BY n.version`,
      [story.nurseryId],
    );
    expect(numbers).toEqual({ first: 1, last: numbers?.all, all: numbers?.all, version: numbers?.all });
  });

  it('what is reserved is what a plan made anew would reserve, so that no line is shortened for a later one', async () => {
    const { stored, fresh } = await story.readFreshPlan();
    expect(stored.length).toBeGreaterThan(3);
    expect(stored).toEqual(fresh);
  });

  it('no law is broken', async () => {
    const { breaches, looked } = await checkLaws(story.database.ownerUrl);
    expect(breaches).toEqual([]);
    expect(looked.movements).toBeGreaterThan(50);
  });
});
