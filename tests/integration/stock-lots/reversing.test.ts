import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { refusalOf, sent } from '../../support/nursery.ts';
import { tries } from '../../support/tries.ts';
import { type LotStory, newId, openLotStory } from './story.ts';

let story: LotStory;
beforeAll(async () => {
  story = await openLotStory();
});
afterAll(() => story.close());

const happenedOn = '2026-05-20';
const crew = () => story.as('crew').stock;
const grower = () => story.as('grower').stock;

describe('an entry that is taken back', () => {
  test('puts its units back and closes the lots it made', async () => {
    const { lotId, bigPotId, yardId } = await story.begin();
    const next = newId();
    const { entryId } = await crew().potUpLot(
      sent({ lotId, into: [{ lotId: next, containerId: bigPotId, placeId: yardId, units: 40 }], happenedOn }),
    );
    await crew().reverseEntry(sent({ entryId }));
    expect([
      await story.standing(lotId),
      (await story.lotRow(lotId))?.closed_on,
      (await story.lotRow(next))?.closed_on,
    ]).toEqual([{ B: 40 }, null, happenedOn]);
  });

  test('keeps both sides of a conversion apart', async () => {
    const { lotId, containerId, yardId } = await story.begin();
    const { entryId } = await crew().convertLot(
      sent({
        conversion: 'divide',
        from: [{ lotId, units: 5 }],
        into: [{ lotId: newId(), containerId, placeId: yardId, units: 15 }],
        happenedOn,
      }),
    );
    await crew().reverseEntry(sent({ entryId }));
    expect(await story.standing(lotId)).toEqual({ B: 40 });
  });

  test('is taken back only once', async () => {
    const { lotId } = await story.begin();
    const { entryId } = await crew().loseFromLot(sent({ lotId, units: 4, cause: 'rot', happenedOn }));
    await crew().reverseEntry(sent({ entryId }));
    expect(await refusalOf(crew().reverseEntry(sent({ entryId })))).toMatchObject({
      code: 'already-reversed',
      field: 'entryId',
    });
  });

  test('is final', async () => {
    const { lotId } = await story.begin();
    const { entryId } = await crew().loseFromLot(sent({ lotId, units: 4, cause: 'rot', happenedOn }));
    const reversal = await crew().reverseEntry(sent({ entryId }));
    expect((await refusalOf(crew().reverseEntry(sent({ entryId: reversal.entryId })))).code).toBe('reversal-is-final');
  });

  test('stands while its units have gone on, and the later entries are named', async () => {
    const { lotId, yardId, bedId } = await story.begin();
    const { entryId } = await crew().moveLot(sent({ lotId, toPlaceId: yardId, happenedOn: '2026-05-18' }));
    const later = await crew().moveLot(sent({ lotId, units: 10, toPlaceId: bedId, happenedOn }));
    expect(await refusalOf(crew().reverseEntry(sent({ entryId })))).toMatchObject({
      code: 'units-have-gone',
      data: { later: [{ entryId: later.entryId, kind: 'move', happenedOn }] },
    });
  });

  test('can be taken back once the later entries are', async () => {
    const { lotId, yardId, bedId } = await story.begin();
    const { entryId } = await crew().moveLot(sent({ lotId, toPlaceId: yardId, happenedOn: '2026-05-18' }));
    const later = await crew().moveLot(sent({ lotId, units: 10, toPlaceId: bedId, happenedOn }));
    await crew().reverseEntry(sent({ entryId: later.entryId }));
    await crew().reverseEntry(sent({ entryId }));
    expect(await story.standing(lotId)).toEqual({ B: 40 });
  });

  test('that is not here is not found', async () => {
    expect(await refusalOf(crew().reverseEntry(sent({ entryId: newId() })))).toMatchObject({
      code: 'not-found',
      field: 'entryId',
    });
  });

  test('of somebody else is not for crew to take back', async () => {
    const { lotId } = await story.begin();
    const { entryId } = await grower().loseFromLot(sent({ lotId, units: 4, cause: 'rot', happenedOn }));
    expect((await refusalOf(crew().reverseEntry(sent({ entryId })))).code).toBe('not-allowed');
  });

  test('shows both in the story of the lot', async () => {
    const { lotId } = await story.begin();
    const { entryId } = await crew().loseFromLot(sent({ lotId, units: 4, cause: 'rot', happenedOn }));
    const reversal = await crew().reverseEntry(sent({ entryId }));
    const { entries } = await crew().readLot({ lotId });
    expect(entries.slice(0, 2)).toMatchObject([
      { id: reversal.entryId, kind: 'reverse', reversesId: entryId },
      { id: entryId, reversedBy: { id: reversal.entryId } },
    ]);
  });
});

describe('taking back what hangs on an entry', () => {
  test('ends the hold it opened', async () => {
    const { lotId } = await story.begin();
    const { entryId } = await grower().holdMany(sent({ lotIds: [lotId], reason: 'quarantine', happenedOn }));
    await grower().reverseEntry(sent({ entryId }));
    expect(await story.openHolds(lotId)).toEqual([]);
  });

  test('opens the hold it released', async () => {
    const { lotId } = await story.begin();
    await grower().holdMany(sent({ lotIds: [lotId], reason: 'quarantine', happenedOn }));
    const { entryId } = await grower().releaseLot(
      sent({ lotId, reason: 'quarantine', releaseReason: 'clean', happenedOn }),
    );
    await grower().reverseEntry(sent({ entryId }));
    expect(await story.openHolds(lotId)).toEqual(['quarantine']);
  });

  test('opens the places a treatment closed and ends its holds', async () => {
    const { lotId, benchId } = await story.begin();
    const { entryId } = await crew().treatLots(
      sent({
        lotIds: [lotId],
        product: 'Soap',
        applicator: 'Crew',
        treatedAt: '2026-05-20T15:00:00Z',
        reentryHours: 12,
      }),
    );
    await crew().reverseEntry(sent({ entryId }));
    const [place] = await story.sql<{ closed_until_at: Date | null }>(
      'SELECT closed_until_at FROM place WHERE id = $1',
      [benchId],
    );
    expect([
      place?.closed_until_at,
      await story.openHolds(lotId),
      (await crew().readLot({ lotId })).treatments,
    ]).toEqual([null, [], []]);
  });

  test('keeps a place closed as long as it was before the treatment', async () => {
    const { lotId, benchId } = await story.begin();
    await story.sql(
      `UPDATE place SET closed_until_at = '2026-05-20T20:00:00Z', closed_reason = 'inspection' WHERE id = $1`,
      [benchId],
    );
    const { entryId } = await crew().treatLots(
      sent({
        lotIds: [lotId],
        product: 'Soap',
        applicator: 'Crew',
        treatedAt: '2026-05-20T15:00:00Z',
        reentryHours: 12,
      }),
    );
    await crew().reverseEntry(sent({ entryId }));
    const [place] = await story.sql<{ closed_until_at: Date; closed_reason: string }>(
      'SELECT closed_until_at, closed_reason FROM place WHERE id = $1',
      [benchId],
    );
    expect([place?.closed_until_at.toISOString(), place?.closed_reason]).toEqual([
      '2026-05-20T20:00:00.000Z',
      'inspection',
    ]);
  });

  test('opens a place that somebody closed', async () => {
    const { benchId } = await story.begin();
    const { entryId } = await crew().closePlace(
      sent({ placeId: benchId, untilAt: '2026-05-22T12:00:00Z', reason: 'mud' }),
    );
    await crew().reverseEntry(sent({ entryId }));
    expect(await story.sql('SELECT 1 FROM place WHERE id = $1 AND closed_until_at IS NOT NULL', [benchId])).toEqual([]);
  });

  test('does not close a place that was opened, since people may be in it', async () => {
    const { benchId } = await story.begin();
    await crew().closePlace(sent({ placeId: benchId, untilAt: '2026-05-22T12:00:00Z', reason: 'mud' }));
    const [place] = await story.sql<{ edition: number }>('SELECT edition FROM place WHERE id = $1', [benchId]);
    const { entryId } = await grower().openPlace(
      sent({ placeId: benchId, reason: 'dry again', edition: place?.edition }),
    );
    expect((await refusalOf(grower().reverseEntry(sent({ entryId })))).code).toBe('cannot-reverse');
  });

  test('makes a root ball unchecked again, whichever of two checks goes first', async () => {
    const { plantId, sourceId, containerId, benchId } = await story.begin();
    const lotId = await story.stock.addLot({ plantId, sourceId, containerId, placeId: benchId, rootCheckedOn: null });
    const check = (on: string) =>
      crew().observeMany(sent({ lotIds: [lotId], kind: 'root-ball', result: 'holds', happenedOn: on }));
    const [first, second] = [await check('2026-05-10'), await check('2026-05-18')];
    await crew().reverseEntry(sent({ entryId: first.entryId }));
    expect(await story.lotRow(lotId)).toMatchObject({ root_checked_on: '2026-05-18' });
    await crew().reverseEntry(sent({ entryId: second.entryId }));
    expect(await story.lotRow(lotId)).toMatchObject({ root_checked_on: null, ready_on: null });
  });

  test('says again how exactly a lot was counted', async () => {
    const { lotId } = await story.begin();
    const { entryId } = await crew().countLot(sent({ lotId, countedUnits: 38, countKind: 'estimated', happenedOn }));
    await crew().reverseEntry(sent({ entryId }));
    expect([(await story.lotRow(lotId))?.count_kind, await story.standing(lotId)]).toEqual(['counted', { B: 40 }]);
  });

  test('gives plants their old name back', async () => {
    const { lotId, plantId } = await story.begin();
    const really = await story.stock.addPlant({ name: 'Asclepias mistaken', code: 'QBAA' });
    const { entryId } = await grower().reIdentifyLot(sent({ lotId, plantId: really, happenedOn }));
    await grower().reverseEntry(sent({ entryId }));
    expect((await story.lotRow(lotId))?.plant_id).toBe(plantId);
  });

  test('asks for a later name to be taken back first', async () => {
    const { lotId } = await story.begin();
    const [one, two] = [
      await story.stock.addPlant({ name: 'Asclepias first', code: 'QBAB' }),
      await story.stock.addPlant({ name: 'Asclepias second', code: 'QBAC' }),
    ];
    const { entryId } = await grower().reIdentifyLot(sent({ lotId, plantId: one, happenedOn }));
    const later = await grower().reIdentifyLot(sent({ lotId, plantId: two, happenedOn }));
    expect(await refusalOf(grower().reverseEntry(sent({ entryId })))).toMatchObject({
      code: 'units-have-gone',
      data: { later: [{ entryId: later.entryId }] },
    });
  });
});

test('a run of entries taken back from the last to the first leaves every balance as it was', async () => {
  const step = fc.oneof(
    fc.record({ kind: fc.constant('lose' as const), units: fc.integer({ min: 1, max: 5 }) }),
    fc.record({ kind: fc.constant('move' as const), units: fc.integer({ min: 1, max: 10 }) }),
    fc.record({ kind: fc.constant('pot-up' as const), units: fc.integer({ min: 1, max: 10 }) }),
    fc.record({ kind: fc.constant('divide' as const), units: fc.integer({ min: 1, max: 4 }) }),
    fc.record({ kind: fc.constant('split' as const), units: fc.integer({ min: 1, max: 6 }) }),
    fc.record({ kind: fc.constant('count' as const), units: fc.integer({ min: 0, max: 60 }) }),
    fc.record({ kind: fc.constant('lose-percent' as const), units: fc.integer({ min: 1, max: 40 }) }),
  );
  const balances = () =>
    story.sql(`SELECT id, units FROM account WHERE nursery_id = $1 AND kind <> 'outside' AND units > 0 ORDER BY id`, [
      story.nurseryId,
    ]);

  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 6 }), async (steps) => {
      const { lotId, bigPotId, containerId, benchId, yardId } = await story.begin();
      const before = await balances();
      const entries: string[] = [];
      for (const { kind, units } of steps) {
        const here = { lotId, placeId: benchId, happenedOn };
        const into = (container: string, count: number) => [
          { lotId: newId(), containerId: container, placeId: yardId, units: count },
        ];
        // A step that finds too little on the bench is refused and leaves nothing to take back.
        const work = {
          lose: () => crew().loseFromLot(sent({ ...here, units, cause: 'rot' as const })),
          move: () => crew().moveLot(sent({ ...here, units, toPlaceId: yardId })),
          'pot-up': () => crew().potUpLot(sent({ ...here, into: into(bigPotId, units) })),
          divide: () =>
            crew().convertLot(
              sent({
                conversion: 'divide' as const,
                from: [{ lotId, placeId: benchId, units }],
                into: into(containerId, units * 3),
                happenedOn,
              }),
            ),
          split: () => crew().splitLot(sent({ ...here, into: [{ lotId: newId(), placeId: yardId, units }] })),
          count: () => crew().countLot(sent({ ...here, countedUnits: units, countKind: 'counted' as const })),
          'lose-percent': () =>
            crew().loseMany(sent({ placeId: benchId, percent: units, cause: 'weather' as const, happenedOn })),
        }[kind];
        const done = await work().catch((error: { cause?: { code?: string } }) => {
          if (error.cause?.code !== 'not-enough-units' && error.cause?.code !== 'nothing-there') throw error;
          return null;
        });
        if (done) entries.push(done.entryId);
      }
      for (const entryId of entries.reverse()) await crew().reverseEntry(sent({ entryId }));
      expect(await balances()).toEqual(before);
    }),
    tries(25, 20260520),
  );
});
