import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { refusalOf, sent } from '../../support/nursery.ts';
import { type LotStory, newId, openLotStory } from './story.ts';

let story: LotStory;
beforeAll(async () => {
  story = await openLotStory();
});
afterAll(() => story.close());

const happenedOn = '2026-05-20';
const crew = () => story.as('crew').stock;

describe('potting up', () => {
  test('moves plants into a new lot that keeps the confined day and starts the container day', async () => {
    const { lotId, bigPotId, yardId } = await story.begin();
    const next = newId();
    await crew().potUpLot(
      sent({ lotId, into: [{ lotId: next, containerId: bigPotId, placeId: yardId, units: 15 }], happenedOn }),
    );
    expect([await story.standing(lotId), await story.standing(next)]).toEqual([{ B: 25 }, { Y: 15 }]);
    expect(await story.lotRow(next)).toMatchObject({
      confined_on: '2026-04-14',
      container_on: happenedOn,
      potted_on: happenedOn,
      root_checked_on: null,
    });
  });

  test('into several lots at once gives each a code of its own', async () => {
    const { lotId, bigPotId, yardId, benchId } = await story.begin();
    const { lots } = await crew().potUpLot(
      sent({
        lotId,
        into: [
          { lotId: newId(), containerId: bigPotId, placeId: yardId, units: 10 },
          { lotId: newId(), containerId: bigPotId, placeId: benchId, units: 30 },
        ],
        happenedOn,
      }),
    );
    expect(new Set(lots.map(({ code }) => code)).size).toBe(2);
  });

  test('all of a lot closes it', async () => {
    const { lotId, bigPotId, yardId } = await story.begin();
    await crew().potUpLot(
      sent({ lotId, into: [{ lotId: newId(), containerId: bigPotId, placeId: yardId, units: 40 }], happenedOn }),
    );
    expect((await story.lotRow(lotId))?.closed_on).toBe(happenedOn);
  });

  test('more than there is is refused beside the count, with both numbers', async () => {
    const { lotId, bigPotId, yardId } = await story.begin();
    const refusal = await refusalOf(
      crew().potUpLot(
        sent({ lotId, into: [{ lotId: newId(), containerId: bigPotId, placeId: yardId, units: 41 }], happenedOn }),
      ),
    );
    expect(refusal).toMatchObject({
      code: 'not-enough-units',
      field: 'into.0.units',
      data: { wanted: 41, available: 40 },
    });
  });

  test('into a closed place is refused with the time it opens', async () => {
    const { lotId, bigPotId, yardId } = await story.begin();
    await story.sql(`UPDATE place SET closed_until_at = '2026-05-21T12:00:00Z', closed_reason = 'soap' WHERE id = $1`, [
      yardId,
    ]);
    const refusal = await refusalOf(
      crew().potUpLot(
        sent({ lotId, into: [{ lotId: newId(), containerId: bigPotId, placeId: yardId, units: 4 }], happenedOn }),
      ),
    );
    expect(refusal).toMatchObject({
      code: 'place-closed',
      field: 'into.0.placeId',
      data: { until: '2026-05-21T12:00:00.000Z', reason: 'soap' },
    });
  });

  test('into the ground is refused', async () => {
    const { lotId, groundId, yardId } = await story.begin();
    const refusal = await refusalOf(
      crew().potUpLot(
        sent({ lotId, into: [{ lotId: newId(), containerId: groundId, placeId: yardId, units: 4 }], happenedOn }),
      ),
    );
    expect(refusal).toMatchObject({ code: 'wrong-container', data: { needs: 'pot' } });
  });

  test.each([
    ['before the lot was potted', { happenedOn: '2026-04-13' }, 'day-too-early'],
    ['tomorrow', { happenedOn: '2026-05-21' }, 'day-in-future'],
  ])('%s is refused', async (_when, change, code) => {
    const { lotId, bigPotId, yardId } = await story.begin();
    expect(
      await refusalOf(
        crew().potUpLot(
          sent({ lotId, into: [{ lotId: newId(), containerId: bigPotId, placeId: yardId, units: 4 }], ...change }),
        ),
      ),
    ).toMatchObject({ code, field: 'happenedOn' });
  });

  test.each([
    ['lot', 'lotId'],
    ['container', 'into.0.containerId'],
    ['place', 'into.0.placeId'],
  ])('a %s that is not here is not found', async (what, field) => {
    const { lotId, bigPotId, yardId } = await story.begin();
    const body = {
      lotId: what === 'lot' ? newId() : lotId,
      into: [
        {
          lotId: newId(),
          containerId: what === 'container' ? newId() : bigPotId,
          placeId: what === 'place' ? newId() : yardId,
          units: 4,
        },
      ],
      happenedOn,
    };
    expect(await refusalOf(crew().potUpLot(sent(body)))).toMatchObject({ code: 'not-found', field, data: { what } });
  });

  test('a new lot under an id that is taken is refused', async () => {
    const { lotId, bigPotId, yardId } = await story.begin();
    expect(
      (
        await refusalOf(
          crew().potUpLot(
            sent({ lotId, into: [{ lotId, containerId: bigPotId, placeId: yardId, units: 4 }], happenedOn }),
          ),
        )
      ).code,
    ).toBe('id-taken');
  });
});

describe('converting', () => {
  test('one plant cut in three starts new clocks and counts both sides', async () => {
    const { lotId, containerId, yardId } = await story.begin();
    const next = newId();
    await crew().convertLot(
      sent({
        conversion: 'divide',
        from: [{ lotId, units: 5 }],
        into: [{ lotId: next, containerId, placeId: yardId, units: 15 }],
        happenedOn,
      }),
    );
    expect([await story.standing(lotId), await story.standing(next)]).toEqual([{ B: 35 }, { Y: 15 }]);
    expect(await story.lotRow(next)).toMatchObject({ confined_on: happenedOn, container_on: happenedOn });
  });

  test('three plants in one pot keep the oldest roots', async () => {
    const { lotId, bigPotId, yardId } = await story.begin();
    const next = newId();
    await crew().convertLot(
      sent({
        conversion: 'clump',
        from: [{ lotId, units: 30 }],
        into: [{ lotId: next, containerId: bigPotId, placeId: yardId, units: 10 }],
        happenedOn,
      }),
    );
    expect(await story.standing(next)).toEqual({ Y: 10 });
    expect(await story.lotRow(next)).toMatchObject({ confined_on: '2026-04-14', container_on: happenedOn });
  });

  test('a tray patched from another lot keeps the earliest day', async () => {
    const { lotId, plantId, sourceId, containerId, benchId } = await story.begin();
    const other = await story.stock.addLot({
      plantId,
      sourceId,
      containerId,
      placeId: benchId,
      units: 6,
      pottedOn: '2026-05-01',
    });
    const next = newId();
    await crew().convertLot(
      sent({
        conversion: 'patch',
        from: [
          { lotId, units: 38 },
          { lotId: other, units: 2 },
        ],
        into: [{ lotId: next, containerId, placeId: benchId, units: 40 }],
        happenedOn,
      }),
    );
    expect(await story.standing(next)).toEqual({ B: 40 });
    expect(await story.lotRow(next)).toMatchObject({ potted_on: '2026-04-14', container_on: '2026-04-14' });
  });

  test('plants of two sources into one lot is refused with why', async () => {
    const { lotId, plantId, containerId, benchId } = await story.begin();
    const other = await story.stock.addLot({
      plantId,
      sourceId: await story.stock.addSource(plantId),
      containerId,
      placeId: benchId,
    });
    const refusal = await refusalOf(
      crew().convertLot(
        sent({
          conversion: 'clump',
          from: [
            { lotId, units: 3 },
            { lotId: other, units: 3 },
          ],
          into: [{ lotId: newId(), containerId, placeId: benchId, units: 2 }],
          happenedOn,
        }),
      ),
    );
    expect(refusal).toMatchObject({ code: 'lots-differ', data: { in: ['source'] } });
  });

  test('the same plants named twice is refused', async () => {
    const { lotId, containerId, benchId } = await story.begin();
    const refusal = await refusalOf(
      crew().convertLot(
        sent({
          conversion: 'clump',
          from: [
            { lotId, units: 30 },
            { lotId, units: 30 },
          ],
          into: [{ lotId: newId(), containerId, placeId: benchId, units: 20 }],
          happenedOn,
        }),
      ),
    );
    expect(refusal).toMatchObject({ code: 'invalid-input', field: 'from' });
  });
});

describe('splitting and merging', () => {
  test('a part under its own label keeps clocks and the checked root ball', async () => {
    const { lotId, yardId } = await story.begin();
    const part = newId();
    await crew().splitLot(sent({ lotId, into: [{ lotId: part, placeId: yardId, units: 12 }], happenedOn }));
    expect([await story.standing(lotId), await story.standing(part)]).toEqual([{ B: 28 }, { Y: 12 }]);
    expect(await story.lotRow(part)).toMatchObject({
      confined_on: '2026-04-14',
      container_on: '2026-04-14',
      potted_on: '2026-04-14',
      root_checked_on: '2026-04-14',
    });
  });

  test('leftovers share one label, each where it stands, under the earliest days', async () => {
    const { lotId, plantId, sourceId, containerId, yardId } = await story.begin();
    const younger = await story.stock.addLot({
      plantId,
      sourceId,
      containerId,
      placeId: yardId,
      units: 5,
      pottedOn: '2026-05-01',
    });
    const merged = newId();
    await crew().mergeLots(sent({ lotIds: [younger, lotId], into: { lotId: merged }, happenedOn }));
    expect(await story.standing(merged)).toEqual({ B: 40, Y: 5 });
    expect(await story.lotRow(merged)).toMatchObject({
      confined_on: '2026-04-14',
      container_on: '2026-04-14',
      potted_on: '2026-04-14',
      root_checked_on: '2026-05-01',
    });
  });

  test('lots of different containers stay apart', async () => {
    const { lotId, plantId, sourceId, bigPotId, benchId } = await story.begin();
    const other = await story.stock.addLot({ plantId, sourceId, containerId: bigPotId, placeId: benchId });
    expect(
      await refusalOf(crew().mergeLots(sent({ lotIds: [lotId, other], into: { lotId: newId() }, happenedOn }))),
    ).toMatchObject({ code: 'lots-differ', data: { in: ['container'] } });
  });

  test('a lot of which nothing stands is not merged', async () => {
    const { lotId, plantId, sourceId, containerId, benchId } = await story.begin();
    const empty = await story.stock.addLot({ plantId, sourceId, containerId, placeId: benchId, units: 3 });
    await crew().loseFromLot(sent({ lotId: empty, units: 3, cause: 'rot', happenedOn }));
    expect(
      (await refusalOf(crew().mergeLots(sent({ lotIds: [lotId, empty], into: { lotId: newId() }, happenedOn })))).code,
    ).toBe('nothing-there');
  });
});
