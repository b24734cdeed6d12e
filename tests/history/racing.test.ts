import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkLaws } from '../../apps/server/src/db/check.ts';
import { idOf, sent } from '../support/nursery.ts';
import { replay } from './replay.ts';
import { CLIENTS, openStory, outcomeOf, people, type Story, TODAY } from './story.ts';

let story: Story;
beforeEach(async () => {
  story = await openStory();
});
afterEach(() => story.close());

const orderIdOf = (person: number) => idOf('order', String(person));
const lineIdOf = (person: number) => idOf('line', String(person));

async function orderAll(units: number): Promise<void> {
  const outcomes = await Promise.all(
    people.map((person) => {
      const order = story.orderOf(orderIdOf(person), lineIdOf(person), units);
      return outcomeOf(() => story.by(person).orders.addOrder(order));
    }),
  );
  expect(outcomes.filter(({ code }) => code !== 'done')).toEqual([]);
}

const reservedByRank = () =>
  story.sql<{ units: number }>(
    `
  SELECT coalesce(sum(r.units), 0)::int AS units FROM order_line l LEFT JOIN reservation r ON r.nursery_id = l.nursery_id AND r.line_id = l.id
   WHERE l.nursery_id = $1 GROUP BY l.id, l.rank ORDER BY l.rank`,
    [story.nurseryId],
  );

async function expectLawful() {
  expect((await checkLaws(story.database.ownerUrl)).breaches).toEqual([]);
  expect(await replay(story)).toMatchObject({ negative: [], different: [] });
}

describe(`of one lot, ${CLIENTS} people at once`, () => {
  it('are promised what is there, whoever came first being served first', async () => {
    await story.addLot(61);
    await orderAll(3);
    const reserved = (await reservedByRank()).map(({ units }) => units);
    expect(reserved).toEqual([...Array.from({ length: 20 }, () => 3), 1, ...Array.from({ length: 19 }, () => 0)]);
    await expectLawful();
  });

  it('can pull no more than there is', async () => {
    const lotId = await story.addLot(60);
    await orderAll(3);
    const outcomes = await Promise.all(
      people.map((person) => {
        const pull = sent({
          orderId: orderIdOf(person),
          happenedOn: TODAY,
          rows: [{ lineId: lineIdOf(person), lotId, placeId: story.placeIds[0], units: 3 }],
        });
        return outcomeOf(() => story.by(person).gardens.pullForOrder(pull));
      }),
    );
    expect(outcomes.filter(({ code }) => code === 'done')).toHaveLength(20);
    expect(outcomes.filter(({ code }) => code === 'not-enough-units')).toHaveLength(20);
    expect(await story.unitsOf(lotId)).toBe(0);
    await expectLawful();
  });

  it('can pin no more than there is', async () => {
    const lotId = await story.addLot(60);
    await orderAll(3);
    const outcomes = await Promise.all(
      people.map((person) => {
        const pin = sent({
          lineId: lineIdOf(person),
          supplyId: lotId,
          units: 3,
          acceptedShortages: people.map((other) => ({ lineId: lineIdOf(other), units: 3 })),
        });
        return outcomeOf(() => story.by(person).promises.pinReservation(pin));
      }),
    );
    expect(outcomes.filter(({ code }) => code === 'done')).toHaveLength(20);
    expect(outcomes.filter(({ code }) => code === 'pinned-by-others')).toHaveLength(20);
    await expectLawful();
  });

  it('who order, pull, lose and sell in any order never use a plant twice', async () => {
    const lotId = await story.addLot(100);
    const taken = await Promise.all(
      people.map(async (person) => {
        const client = story.by(person);
        const [orderId, lineId, placeId, commandId] = [
          orderIdOf(person),
          lineIdOf(person),
          story.placeIds[0],
          idOf('take', String(person)),
        ];
        const order = story.orderOf(orderId, lineId, 4);
        await outcomeOf(() => client.orders.addOrder(order));
        const entry = { happenedOn: TODAY };
        return outcomeOf(
          [
            () =>
              client.gardens.pullForOrder(
                sent({ ...entry, orderId, rows: [{ lineId, lotId, placeId, units: 4 }] }, commandId),
              ),
            () => client.stock.loseFromLot(sent({ ...entry, lotId, units: 4, cause: 'weather' as const }, commandId)),
            () => client.stock.sellFromLot(sent({ ...entry, lotId, units: 4 }, commandId)),
            () =>
              client.gardens.plantOrder(
                sent(
                  {
                    ...entry,
                    orderId,
                    rows: [{ lineId, lotId, units: 0, extra: { from: 'place' as const, placeId, units: 4 } }],
                  },
                  commandId,
                ),
              ),
          ][person % 4] ?? expect.fail,
        );
      }),
    );
    expect(taken.filter(({ code }) => code === 'done')).toHaveLength(25);
    expect(taken.filter(({ code }) => code === 'not-enough-units')).toHaveLength(15);
    expect(await story.unitsOf(lotId)).toBe(0);
    expect((await reservedByRank()).filter(({ units }) => units > 0)).toEqual([]);
    await expectLawful();
  });
});
