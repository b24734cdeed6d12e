import { randomUUID } from 'node:crypto';
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
const grower = () => story.as('grower').stock;
const soap = {
  product: 'Insecticidal soap',
  registrationNo: '0000-00',
  rate: '2 %',
  applicator: 'Test crew',
  target: 'aphids',
  treatedAt: '2026-05-20T15:00:00Z',
};

describe('a hold', () => {
  test('is on whole lots and is released with a reason that stays readable', async () => {
    const { lotId } = await story.begin();
    await grower().holdMany(sent({ lotIds: [lotId], reason: 'quarantine', happenedOn }));
    expect(await story.openHolds(lotId)).toEqual(['quarantine']);
    await grower().releaseLot(
      sent({ lotId, reason: 'quarantine', releaseReason: 'No pests after two weeks', happenedOn }),
    );
    const { holds } = await crew().readLot({ lotId });
    expect(holds).toMatchObject([
      { reason: 'quarantine', heldOn: happenedOn, releasedOn: happenedOn, releaseReason: 'No pests after two weeks' },
    ]);
  });

  test('is never opened twice for one reason', async () => {
    const { lotId } = await story.begin();
    await grower().holdMany(sent({ lotIds: [lotId], reason: 'inspector', happenedOn }));
    expect(
      await refusalOf(grower().holdMany(sent({ lotIds: [lotId], reason: 'inspector', happenedOn }))),
    ).toMatchObject({ code: 'already-held', field: 'reason' });
  });

  test('leaves no supply', async () => {
    const { lotId } = await story.begin();
    await grower().holdMany(sent({ lotIds: [lotId], reason: 'mother-stock', happenedOn }));
    expect((await crew().readLot({ lotId })).units).toMatchObject({ onHand: 40, free: 0 });
  });

  test('lets losses, moves, counts and observations be recorded', async () => {
    const { lotId, yardId } = await story.begin();
    await grower().holdMany(sent({ lotIds: [lotId], reason: 'quarantine', happenedOn }));
    await crew().loseFromLot(sent({ lotId, units: 2, cause: 'rot', happenedOn }));
    await crew().moveLot(sent({ lotId, toPlaceId: yardId, happenedOn }));
    await crew().countLot(sent({ lotId, countedUnits: 37, countKind: 'counted', happenedOn }));
    await crew().observeMany(sent({ lotIds: [lotId], kind: 'bloom', happenedOn }));
    expect(await story.standing(lotId)).toEqual({ Y: 37 });
  });

  test.each(['crew', 'viewer'] as const)('is not for %s to set or end', async (role) => {
    const { lotId } = await story.begin();
    expect(
      (await refusalOf(story.as(role).stock.holdMany(sent({ lotIds: [lotId], reason: 'quarantine', happenedOn }))))
        .code,
    ).toBe('not-allowed');
  });

  test('that is not there cannot be released', async () => {
    const { lotId } = await story.begin();
    expect(
      await refusalOf(grower().releaseLot(sent({ lotId, reason: 'quarantine', releaseReason: 'done', happenedOn }))),
    ).toMatchObject({ code: 'not-held', field: 'reason' });
  });

  test('is not released without a reason', async () => {
    const { lotId } = await story.begin();
    expect(
      await refusalOf(grower().releaseLot(sent({ lotId, reason: 'quarantine', releaseReason: '  ', happenedOn }))),
    ).toMatchObject({ code: 'invalid-input', field: 'releaseReason' });
  });

  test('is not released before it began', async () => {
    const { lotId } = await story.begin();
    await grower().holdMany(sent({ lotIds: [lotId], reason: 'quarantine', happenedOn }));
    expect(
      (
        await refusalOf(
          grower().releaseLot(sent({ lotId, reason: 'quarantine', releaseReason: 'done', happenedOn: '2026-05-19' })),
        )
      ).code,
    ).toBe('day-too-early');
  });
});

describe('what holds a parent', () => {
  test.each(['potUpLot', 'splitLot'] as const)('holds what comes of it by %s', async (how) => {
    const { lotId, bigPotId, yardId } = await story.begin();
    await grower().holdMany(sent({ lotIds: [lotId], reason: 'quarantine', happenedOn }));
    const next = newId();
    if (how === 'potUpLot')
      await crew().potUpLot(
        sent({ lotId, into: [{ lotId: next, containerId: bigPotId, placeId: yardId, units: 5 }], happenedOn }),
      );
    else await crew().splitLot(sent({ lotId, into: [{ lotId: next, placeId: yardId, units: 5 }], happenedOn }));
    expect(await story.openHolds(next)).toEqual(['quarantine']);
  });

  test('holds a merged lot for every reason of its parents', async () => {
    const { lotId, plantId, sourceId, containerId, benchId } = await story.begin();
    const other = await story.stock.addLot({ plantId, sourceId, containerId, placeId: benchId, units: 5 });
    await grower().holdMany(sent({ lotIds: [lotId], reason: 'quarantine', happenedOn }));
    await grower().holdMany(sent({ lotIds: [other], reason: 'inspector', happenedOn }));
    const merged = newId();
    await crew().mergeLots(sent({ lotIds: [lotId, other], into: { lotId: merged }, happenedOn }));
    expect(await story.openHolds(merged)).toEqual(['inspector', 'quarantine']);
  });

  test('no longer holds what comes of it once it is released', async () => {
    const { lotId, bigPotId, yardId } = await story.begin();
    await grower().holdMany(sent({ lotIds: [lotId], reason: 'quarantine', happenedOn }));
    await grower().releaseLot(sent({ lotId, reason: 'quarantine', releaseReason: 'clean', happenedOn }));
    const next = newId();
    await crew().potUpLot(
      sent({ lotId, into: [{ lotId: next, containerId: bigPotId, placeId: yardId, units: 5 }], happenedOn }),
    );
    expect(await story.openHolds(next)).toEqual([]);
  });
});

describe('a treatment', () => {
  test('closes the places of the lots until the re-entry time', async () => {
    const { lotId, benchId } = await story.begin();
    const treated = await crew().treatLots(sent({ lotIds: [lotId], ...soap, reentryHours: 12 }));
    expect(treated).toMatchObject({ closedUntilAt: '2026-05-21T03:00:00.000Z', lots: 1 });
    const [place] = await story.sql<{ closed_until_at: Date; closed_reason: string }>(
      'SELECT closed_until_at, closed_reason FROM place WHERE id = $1',
      [benchId],
    );
    expect([place?.closed_until_at.toISOString(), place?.closed_reason]).toEqual([
      '2026-05-21T03:00:00.000Z',
      'Insecticidal soap',
    ]);
  });

  test('of a place closes the places within it too and reaches all that stands there', async () => {
    const { lotId, plantId, sourceId, containerId, benchId } = await story.begin();
    const shelf = await story.stock.addPlace({ code: `Z-${newId().slice(0, 6)}` });
    await story.sql('UPDATE place SET parent_id = $1 WHERE id = $2', [benchId, shelf]);
    const other = await story.stock.addLot({ plantId, sourceId, containerId, placeId: shelf, units: 7 });
    const treated = await crew().treatPlace(sent({ placeId: benchId, ...soap, reentryAt: '2026-05-21T06:00:00Z' }));
    expect([treated.lots, treated.closedPlaces.length]).toEqual([2, 2]);
    expect([await story.openHolds(lotId), await story.openHolds(other)]).toEqual([['treated'], ['treated']]);
  });

  test('whose re-entry time has gone by closes nothing', async () => {
    const { lotId } = await story.begin();
    expect(await crew().treatLots(sent({ lotIds: [lotId], ...soap, reentryHours: 1 }))).toMatchObject({
      closedUntilAt: null,
      closedPlaces: [],
    });
  });

  test('holds a host of larvae back and leaves other plants alone', async () => {
    const { lotId, sourceId, containerId, benchId } = await story.begin();
    const grassId = await story.stock.addPlant({
      name: `Bouteloua grass${newId().slice(0, 4)}`,
      code: 'BOCU',
      larvalHost: false,
    });
    const grass = await story.stock.addLot({ plantId: grassId, sourceId, containerId, placeId: benchId });
    const treated = await crew().treatLots(sent({ lotIds: [lotId, grass], ...soap }));
    expect([treated.heldLots.length, await story.openHolds(lotId), await story.openHolds(grass)]).toEqual([
      1,
      ['treated'],
      [],
    ]);
  });

  test('tomorrow is refused', async () => {
    const { lotId } = await story.begin();
    expect(
      await refusalOf(crew().treatLots(sent({ lotIds: [lotId], ...soap, treatedAt: '2026-05-22T15:00:00Z' }))),
    ).toMatchObject({ code: 'day-in-future', field: 'treatedAt' });
  });

  test('with a re-entry before it is refused', async () => {
    const { lotId } = await story.begin();
    expect(
      await refusalOf(crew().treatLots(sent({ lotIds: [lotId], ...soap, reentryAt: '2026-05-20T14:00:00Z' }))),
    ).toMatchObject({ code: 'invalid-input', field: 'reentryAt' });
  });

  test('is read down lineage by what stood under it, and not by what had left before', async () => {
    const { lotId, bigPotId, yardId } = await story.begin();
    const [before, after] = [newId(), newId()];
    await crew().potUpLot(
      sent({
        lotId,
        into: [{ lotId: before, containerId: bigPotId, placeId: yardId, units: 5 }],
        happenedOn: '2026-05-10',
      }),
    );
    await crew().treatLots(sent({ lotIds: [lotId], ...soap, treatedAt: '2026-05-15T15:00:00Z' }));
    await crew().potUpLot(
      sent({ lotId, into: [{ lotId: after, containerId: bigPotId, placeId: yardId, units: 5 }], happenedOn }),
    );
    const products = async (id: string) =>
      (await crew().readLot({ lotId: id })).treatments.map(({ product }) => product);
    expect([await products(before), await products(after)]).toEqual([[], ['Insecticidal soap']]);
  });

  test('of a batch goes with the plants that were potted from it, and holds them', async () => {
    const { plantId, sourceId, containerId, benchId, yardId } = await story.begin();
    const [batchId, entryId, lotId] = [randomUUID(), randomUUID(), randomUUID()];
    await story.sql(
      `WITH n AS (UPDATE nursery SET version = version + 1 WHERE id = $1 RETURNING version)
      INSERT INTO entry (nursery_id, id, version, kind, happened_on, recorded_at) SELECT $1, $2, version, 'start', '2026-03-01', now() FROM n`,
      [story.nurseryId, entryId],
    );
    await story.sql(
      `INSERT INTO batch (nursery_id, id, code, plant_id, source_id, created_entry_id, method, unit, started_on) VALUES ($1, $2, $3, $4, $5, $6, 'seed', 'cell', '2026-03-01')`,
      [story.nurseryId, batchId, `B-${batchId.slice(0, 6)}`, plantId, sourceId, entryId],
    );
    await story.sql(
      `WITH a AS (INSERT INTO account (nursery_id, id, kind, batch_id, place_id, outside) VALUES ($1, account_key('place', $2, $3), 'place', $2::uuid, $3::uuid, NULL),
        ($1, account_key('outside', 'outside', 'started'), 'outside', NULL, NULL, 'started') ON CONFLICT DO NOTHING)
      INSERT INTO movement (nursery_id, entry_id, line, from_account_id, to_account_id, from_units, to_units)
      VALUES ($1, $4, 0, account_key('outside', 'outside', 'started'), account_key('place', $2, $3), 50, 50)`,
      [story.nurseryId, batchId, benchId, entryId],
    );
    await crew().treatPlace(sent({ placeId: benchId, ...soap, treatedAt: '2026-05-15T15:00:00Z' }));
    await story.as('crew').propagation.potBatch(
      sent({
        batchId,
        lots: [{ into: 'new', lotId, containerId, placeId: yardId, unitsOut: 20, pottedUnits: 20 }],
        firstAlive: '2026-04-20',
        happenedOn,
      }),
    );
    expect(await story.openHolds(lotId)).toEqual(['treated']);
    expect((await crew().readLot({ lotId })).treatments).toMatchObject([
      { product: 'Insecticidal soap', on: { kind: 'batch' } },
    ]);
  });
});
