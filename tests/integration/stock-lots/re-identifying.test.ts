import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { refusalOf, sent } from '../../support/nursery.ts';
import { type LotStory, newId, openLotStory } from './story.ts';

let story: LotStory;
beforeAll(async () => {
  story = await openLotStory();
});
afterAll(() => story.close());

const happenedOn = '2026-05-20';
const grower = () => story.as('grower').stock;
const plantOf = async (lotId: string) => (await story.lotRow(lotId))?.plant_id;
const otherPlant = (code: string) =>
  story.stock.addPlant({ name: `Asclepias other${newId().slice(0, 6)}`, code, larvalHost: false });

describe('a lot that is another plant than its label says', () => {
  test('takes what came from it along, down to the cuttings of its cuttings', async () => {
    const { lotId, plantId, bigPotId, containerId, yardId, benchId } = await story.begin();
    const [child, sourceId] = [
      newId(),
      await story.stock.addSource(plantId, { kind: 'mother-plants', motherLotId: lotId }),
    ];
    await story
      .as('crew')
      .stock.potUpLot(
        sent({ lotId, into: [{ lotId: child, containerId: bigPotId, placeId: yardId, units: 5 }], happenedOn }),
      );
    const cutting = await story.stock.addLot({ plantId, sourceId, containerId, placeId: benchId, units: 8 });
    const really = await otherPlant('QAAA');
    const answer = await grower().reIdentifyLot(sent({ lotId, plantId: really, happenedOn }));
    expect([answer.lots, await plantOf(lotId), await plantOf(child), await plantOf(cutting)]).toEqual([
      3,
      really,
      really,
      really,
    ]);
  });

  test('leaves its siblings of the same source alone', async () => {
    const { lotId, plantId, sourceId, containerId, benchId } = await story.begin();
    const sibling = await story.stock.addLot({ plantId, sourceId, containerId, placeId: benchId });
    await grower().reIdentifyLot(sent({ lotId, plantId: await otherPlant('QAAB'), happenedOn }));
    expect(await plantOf(sibling)).toBe(plantId);
  });

  test('gives up the promises of lines that want the plant of the label', async () => {
    const begun = await story.begin();
    await story.promise(begun, 10, begun.lotId);
    await grower().reIdentifyLot(sent({ lotId: begun.lotId, plantId: await otherPlant('QAAC'), happenedOn }));
    expect(await story.sql('SELECT 1 FROM reservation WHERE lot_id = $1', [begun.lotId])).toEqual([]);
  });

  test('cannot become what it is already', async () => {
    const { lotId, plantId } = await story.begin();
    expect(await refusalOf(grower().reIdentifyLot(sent({ lotId, plantId, happenedOn })))).toMatchObject({
      code: 'already-that-plant',
      field: 'plantId',
    });
  });

  test('cannot become a plant that is not known here', async () => {
    const { lotId } = await story.begin();
    expect(await refusalOf(grower().reIdentifyLot(sent({ lotId, plantId: newId(), happenedOn })))).toMatchObject({
      code: 'not-found',
      field: 'plantId',
    });
  });

  test('is not for crew to say', async () => {
    const { lotId, plantId } = await story.begin();
    expect((await refusalOf(story.as('crew').stock.reIdentifyLot(sent({ lotId, plantId, happenedOn })))).code).toBe(
      'not-allowed',
    );
  });
});

describe('a source that is another plant than its label says', () => {
  test('takes every lot of it along', async () => {
    const { lotId, plantId, sourceId, containerId, benchId } = await story.begin();
    const sibling = await story.stock.addLot({ plantId, sourceId, containerId, placeId: benchId });
    const really = await otherPlant('QAAD');
    await grower().reIdentifySource(sent({ sourceId, plantId: really, happenedOn }));
    expect([await plantOf(lotId), await plantOf(sibling)]).toEqual([really, really]);
  });

  test('names the gardens in which its plants stand already', async () => {
    const begun = await story.begin();
    const { lineId, orderId } = await story.promise(begun, 10);
    const entryId = newId();
    await story.sql(
      `WITH n AS (UPDATE nursery SET version = version + 1 WHERE id = $1 RETURNING version)
      INSERT INTO entry (nursery_id, id, version, kind, happened_on, recorded_at) SELECT $1, $2, version, 'plant', '2026-05-12', now() FROM n`,
      [story.nurseryId, entryId],
    );
    await story.sql(
      `WITH a AS (INSERT INTO account (nursery_id, id, kind, lot_id, line_id, outside) VALUES ($1, account_key('staged', $2, $3), 'staged', $2::uuid, $3::uuid, NULL),
        ($1, account_key('outside', 'outside', 'planted'), 'outside', NULL, NULL, 'planted') ON CONFLICT DO NOTHING)
      INSERT INTO movement (nursery_id, entry_id, line, from_account_id, to_account_id, from_units, to_units) VALUES
        ($1, $4, 0, account_key('place', $2, $5), account_key('staged', $2, $3), 6, 6), ($1, $4, 1, account_key('staged', $2, $3), account_key('outside', 'outside', 'planted'), 6, 6)`,
      [story.nurseryId, begun.lotId, lineId, entryId, begun.benchId],
    );
    const { gardens } = await grower().reIdentifySource(
      sent({ sourceId: begun.sourceId, plantId: await otherPlant('QAAE'), happenedOn }),
    );
    expect(gardens).toMatchObject([{ orderId, client: 'Invented client', units: 6, lastPlantedOn: '2026-05-12' }]);
  });

  test('that is not here is not found', async () => {
    const { plantId } = await story.begin();
    expect(await refusalOf(grower().reIdentifySource(sent({ sourceId: newId(), plantId, happenedOn })))).toMatchObject({
      code: 'not-found',
      field: 'sourceId',
    });
  });
});
