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

describe('a loss', () => {
  test('leaves the rest standing', async () => {
    const { lotId } = await story.begin();
    await crew().loseFromLot(sent({ lotId, units: 4, cause: 'rot', happenedOn }));
    expect(await story.standing(lotId)).toEqual({ B: 36 });
  });

  test('of plants that look dead asks once more before the last of them come up', async () => {
    const { lotId } = await story.begin();
    const refusal = await refusalOf(crew().loseFromLot(sent({ lotId, units: 4, cause: 'looks-dead', happenedOn })));
    expect(refusal).toMatchObject({ code: 'may-be-dormant', field: 'cause', data: { lastEmergenceMd: '06-10' } });
  });

  test('of plants that look dead is recorded when it was said once more', async () => {
    const { lotId } = await story.begin();
    await crew().loseFromLot(sent({ lotId, units: 4, cause: 'looks-dead', happenedOn, confirmed: true }));
    expect(await story.standing(lotId)).toEqual({ B: 36 });
  });

  test('of a tenth of everything at a place takes a tenth of each lot in one entry', async () => {
    const { lotId, plantId, sourceId, containerId, benchId } = await story.begin();
    const other = await story.stock.addLot({ plantId, sourceId, containerId, placeId: benchId, units: 20 });
    const { entryId, units } = await crew().loseMany(
      sent({ placeId: benchId, percent: 10, cause: 'weather', happenedOn }),
    );
    expect([
      units,
      await story.standing(lotId),
      await story.standing(other),
      await story.unitsOutside(entryId, 'lost'),
    ]).toEqual([6, { B: 36 }, { B: 18 }, 6]);
  });

  test('of so many of each named lot takes as many of each', async () => {
    const { lotId, plantId, sourceId, containerId, yardId } = await story.begin();
    const other = await story.stock.addLot({ plantId, sourceId, containerId, placeId: yardId, units: 20 });
    await crew().loseMany(sent({ lotIds: [lotId, other], units: 3, cause: 'animals', happenedOn }));
    expect([await story.standing(lotId), await story.standing(other)]).toEqual([{ B: 37 }, { Y: 17 }]);
  });

  test.each([[{ units: 3, percent: 10 }], [{}]])(
    'over many lots with %j says neither one thing nor the other',
    async (much) => {
      const { lotId } = await story.begin();
      expect(
        await refusalOf(crew().loseMany(sent({ lotIds: [lotId], ...much, cause: 'animals', happenedOn }))),
      ).toMatchObject({ code: 'invalid-input', field: 'units' });
    },
  );

  test('at a place where nothing stands is refused', async () => {
    const { yardId } = await story.begin();
    expect(
      await refusalOf(crew().loseMany(sent({ placeId: yardId, percent: 10, cause: 'weather', happenedOn }))),
    ).toMatchObject({ code: 'nothing-there', field: 'placeId' });
  });

  test('of nothing named is refused', async () => {
    expect(await refusalOf(crew().loseMany(sent({ percent: 10, cause: 'weather', happenedOn })))).toMatchObject({
      code: 'invalid-input',
      field: 'lotIds',
    });
  });
});

describe('selling and giving', () => {
  test.each([
    ['sellFromLot', 'sold'],
    ['giveFromLot', 'given'],
  ] as const)('%s books plants as %s', async (name, outside) => {
    const { lotId } = await story.begin();
    const { entryId } = await crew()[name](sent({ lotId, units: 6, party: 'A neighbour', happenedOn }));
    expect([await story.standing(lotId), await story.unitsOutside(entryId, outside)]).toEqual([{ B: 34 }, 6]);
  });

  test.each(['sellFromLot', 'giveFromLot'] as const)('%s of a held lot is refused', async (name) => {
    const { lotId } = await story.begin();
    await story.as().stock.holdMany(sent({ lotIds: [lotId], reason: 'inspector', happenedOn }));
    expect(await refusalOf(crew()[name](sent({ lotId, units: 6, happenedOn })))).toMatchObject({
      code: 'lot-held',
      data: { reasons: ['inspector'] },
    });
  });

  test('more than is free is recorded all the same, and promises give way', async () => {
    const begun = await story.begin();
    await story.promise(begun, 30, begun.lotId);
    await crew().sellFromLot(sent({ lotId: begun.lotId, units: 25, happenedOn }));
    const [left] = await story.sql<{ units: number }>(
      'SELECT coalesce(sum(units), 0)::int AS units FROM reservation WHERE lot_id = $1',
      [begun.lotId],
    );
    expect(left?.units).toBe(15);
  });
});

describe('moving', () => {
  test('part of a lot keeps its label at both places', async () => {
    const { lotId, yardId } = await story.begin();
    await crew().moveLot(sent({ lotId, units: 15, toPlaceId: yardId, happenedOn }));
    expect(await story.standing(lotId)).toEqual({ B: 25, Y: 15 });
  });

  test('without a count takes all of it', async () => {
    const { lotId, yardId, bedId } = await story.begin();
    await crew().moveLot(sent({ lotId, units: 15, toPlaceId: yardId, happenedOn }));
    await crew().moveLot(sent({ lotId, toPlaceId: bedId, happenedOn }));
    expect(await story.standing(lotId)).toEqual({ N: 40 });
  });

  test('part of a lot that stands in two places asks which', async () => {
    const { lotId, yardId, bedId } = await story.begin();
    await crew().moveLot(sent({ lotId, units: 15, toPlaceId: yardId, happenedOn }));
    expect(await refusalOf(crew().moveLot(sent({ lotId, units: 5, toPlaceId: bedId, happenedOn })))).toMatchObject({
      code: 'which-place',
      field: 'placeId',
    });
  });

  test('to a closed place is refused until it opens', async () => {
    const { lotId, yardId } = await story.begin();
    await story.sql(
      `UPDATE place SET closed_until_at = '2026-05-20T18:00:00Z', closed_reason = 'inspection' WHERE id = $1`,
      [yardId],
    );
    expect(await refusalOf(crew().moveLot(sent({ lotId, toPlaceId: yardId, happenedOn })))).toMatchObject({
      code: 'place-closed',
      field: 'toPlaceId',
    });
  });

  test('to a bench of a closed house is refused too', async () => {
    const { lotId, yardId, bedId } = await story.begin();
    await story.sql('UPDATE place SET parent_id = $1 WHERE id = $2', [bedId, yardId]);
    await story.sql(
      `UPDATE place SET closed_until_at = '2026-05-20T18:00:00Z', closed_reason = 'spraying' WHERE id = $1`,
      [bedId],
    );
    expect(await refusalOf(crew().moveLot(sent({ lotId, toPlaceId: yardId, happenedOn })))).toMatchObject({
      code: 'place-closed',
      data: { reason: 'spraying' },
    });
  });

  test('from a closed place is recorded, since the plants have gone', async () => {
    const { lotId, benchId, yardId } = await story.begin();
    await story.sql(
      `UPDATE place SET closed_until_at = '2026-05-20T18:00:00Z', closed_reason = 'inspection' WHERE id = $1`,
      [benchId],
    );
    await crew().moveLot(sent({ lotId, toPlaceId: yardId, happenedOn }));
    expect(await story.standing(lotId)).toEqual({ Y: 40 });
  });

  test('to where it stands is refused', async () => {
    const { lotId, benchId } = await story.begin();
    expect((await refusalOf(crew().moveLot(sent({ lotId, toPlaceId: benchId, happenedOn })))).code).toBe(
      'nothing-there',
    );
  });

  test('a whole place takes along all that stands within it', async () => {
    const { lotId, plantId, sourceId, containerId, benchId, yardId } = await story.begin();
    const shelf = await story.stock.addPlace({ code: `Z-${newId().slice(0, 6)}` });
    await story.sql('UPDATE place SET parent_id = $1 WHERE id = $2', [benchId, shelf]);
    const other = await story.stock.addLot({ plantId, sourceId, containerId, placeId: shelf, units: 7 });
    await crew().moveMany(sent({ placeId: benchId, toPlaceId: yardId, happenedOn }));
    expect([await story.standing(lotId), await story.standing(other)]).toEqual([{ Y: 40 }, { Y: 7 }]);
  });

  test('named lots from a place leaves what they have elsewhere', async () => {
    const { lotId, benchId, yardId, bedId } = await story.begin();
    await crew().moveLot(sent({ lotId, units: 15, toPlaceId: yardId, happenedOn }));
    await crew().moveMany(sent({ lotIds: [lotId], placeId: benchId, toPlaceId: bedId, happenedOn }));
    expect(await story.standing(lotId)).toEqual({ N: 25, Y: 15 });
  });
});

describe('a recount', () => {
  test('up books what was found', async () => {
    const { lotId } = await story.begin();
    const { entryId } = await crew().countLot(sent({ lotId, countedUnits: 44, countKind: 'counted', happenedOn }));
    expect([await story.standing(lotId), await story.unitsOutside(entryId, 'found')]).toEqual([{ B: 44 }, 4]);
  });

  test('down is unexplained and never refused for a promise', async () => {
    const begun = await story.begin();
    await story.promise(begun, 40, begun.lotId);
    const { entryId } = await crew().countLot(
      sent({ lotId: begun.lotId, countedUnits: 31, countKind: 'sampled', happenedOn }),
    );
    expect([
      await story.standing(begun.lotId),
      await story.unitsOutside(entryId, 'unexplained'),
      (await story.lotRow(begun.lotId))?.count_kind,
    ]).toEqual([{ B: 31 }, 9, 'sampled']);
  });

  test('that agrees is part of the story without moving anything', async () => {
    const { lotId } = await story.begin();
    const { entryId } = await crew().countLot(sent({ lotId, countedUnits: 40, countKind: 'counted', happenedOn }));
    const { entries } = await crew().readLot({ lotId });
    expect(entries[0]).toMatchObject({ id: entryId, kind: 'count', movements: [] });
  });

  test('of a lot thought gone finds it where it last stood', async () => {
    const { lotId } = await story.begin();
    await crew().loseFromLot(sent({ lotId, units: 40, cause: 'animals', happenedOn }));
    await crew().countLot(sent({ lotId, countedUnits: 2, countKind: 'counted', happenedOn }));
    expect([await story.standing(lotId), (await story.lotRow(lotId))?.closed_on]).toEqual([{ B: 2 }, null]);
  });

  test('of a lot in two places asks which', async () => {
    const { lotId, yardId } = await story.begin();
    await crew().moveLot(sent({ lotId, units: 15, toPlaceId: yardId, happenedOn }));
    expect(
      (await refusalOf(crew().countLot(sent({ lotId, countedUnits: 2, countKind: 'counted', happenedOn })))).code,
    ).toBe('which-place');
  });

  test.each([-1, 1.5])('of %s plants is refused', async (countedUnits) => {
    const { lotId } = await story.begin();
    expect(
      await refusalOf(crew().countLot(sent({ lotId, countedUnits, countKind: 'counted', happenedOn }))),
    ).toMatchObject({ code: 'invalid-input', field: 'countedUnits' });
  });
});

describe('a root ball', () => {
  test('that holds makes every lot of the selection ready', async () => {
    const { lotId, plantId, sourceId, containerId, benchId } = await story.begin();
    const fresh = await story.stock.addLot({ plantId, sourceId, containerId, placeId: benchId, rootCheckedOn: null });
    await crew().observeMany(sent({ lotIds: [lotId, fresh], kind: 'root-ball', result: 'holds', happenedOn }));
    expect(await story.lotRow(fresh)).toMatchObject({ root_checked_on: happenedOn, ready_on: happenedOn });
  });

  test('that does not hold yet takes an earlier check back', async () => {
    const { lotId } = await story.begin();
    await crew().observeMany(
      sent({ lotIds: [lotId], kind: 'root-ball', result: 'not-yet', readyOn: '2026-06-15', happenedOn }),
    );
    expect(await story.lotRow(lotId)).toMatchObject({ root_checked_on: null, ready_on: '2026-06-15' });
  });

  test.each([
    [{ kind: 'root-ball', result: 'splendid' }, 'result'],
    [{ kind: 'root-ball' }, 'result'],
    [{ kind: 'height' }, 'amount'],
  ] as const)('or another sight said as %j is refused beside the field', async (said, field) => {
    const { lotId } = await story.begin();
    expect(await refusalOf(crew().observeMany(sent({ lotIds: [lotId], ...said, happenedOn })))).toMatchObject({
      code: 'invalid-input',
      field,
    });
  });

  test('and what else was seen stand in the story', async () => {
    const { lotId } = await story.begin();
    await crew().observeMany(
      sent({ lotIds: [lotId], kind: 'pest', result: 'oleander aphids', happenedOn, note: 'on ten plants' }),
    );
    const { entries } = await crew().readLot({ lotId });
    expect(entries[0]).toMatchObject({
      kind: 'observe',
      note: 'on ten plants',
      observation: { kind: 'pest', result: 'oleander aphids' },
    });
  });
});
