import { randomUUID } from 'node:crypto';
import { sent } from '../../../support/nursery.ts';
import { packsInTheCold } from '../../../support/packs.ts';
import { aBatch } from './batch-edits.ts';
import { type Edit, set } from './edit.ts';

const happenedOn = '2026-05-20';
const editedSource =
  (
    columns: string,
    asks: { untreated?: boolean; seedZone?: string; wildType?: boolean },
    ...edits: Record<string, unknown>[]
  ): Edit =>
  async (nursery, story) => {
    await set(nursery, 'source', columns);
    await story.addLot({ units: 10 });
    await story.order([{ units: 8, ...asks }]);
    return edits.map(
      (edit) => () =>
        nursery
          .as('grower')
          .sources.editSource(sent({ sourceId: story.sourceId, kind: 'bought-plants' as const, ...edit })),
    );
  };

/** Edits of where plants come from, what was done to them there and what they are. */
export const sourceEdits: Record<string, Edit> = {
  "a source's pesticide statement": editedSource(
    `kind = 'bought-plants'`,
    { untreated: true },
    { pesticideStatement: 'Untreated' },
    { pesticideStatement: 'No pesticide records kept' },
  ),
  'the kind of a source': editedSource(
    `kind = 'bought-plants'`,
    { untreated: true },
    { kind: 'in-ground-bed' },
    { kind: 'unknown' },
  ),
  'the zone of a source': editedSource(`seed_zone = '3a'`, { seedZone: '3a' }, { seedZone: '5b' }, { seedZone: '3a' }),
  'the origin of a source': editedSource(
    `origin = 'wild'`,
    { wildType: true },
    { origin: 'cultivated' },
    { origin: 'wild' },
  ),
  'a treatment of earlier plants, recorded late': async (nursery, story) => {
    await set(nursery, 'plant', 'larval_host = false');
    const bigId = await story.addContainer({ code: 'big-4l', volumeMl: 4000 });
    const lotId = await story.addLot({ units: 20 });
    const { stock } = nursery.as('grower');
    await stock.potUpLot(
      sent({
        lotId,
        into: [{ lotId: randomUUID(), containerId: bigId, placeId: story.placeId, units: 10, readyOn: happenedOn }],
        happenedOn: '2026-05-18',
      }),
    );
    await story.order([{ units: 8, containerId: bigId, untreated: true }]);
    let entryId = '';
    return [
      async () =>
        ({ entryId } = await stock.treatLots(
          sent({ lotIds: [lotId], product: 'Soap', applicator: 'Robin', treatedAt: '2026-05-10T12:00:00Z' }),
        )),
      () => stock.reverseEntry(sent({ entryId })),
    ];
  },
  'a treatment of packs, recorded late': async (nursery, story) => {
    await set(nursery, 'plant', 'larval_host = false');
    const { propagation, stock } = nursery.as('grower');
    const { coldId, draw } = await packsInTheCold(nursery, story);
    const batchId = await draw('2026-03-01', { cautiousUnits: 9, readyOn: happenedOn });
    const lotId = randomUUID();
    await propagation.potBatch(
      sent({
        batchId,
        happenedOn,
        firstAlive: '2026-04',
        lots: [
          {
            lotId,
            containerId: story.containerId,
            placeId: story.placeId,
            unitsOut: 5,
            pottedUnits: 5,
            readyOn: happenedOn,
          },
        ],
      }),
    );
    await story.order([{ units: 8, untreated: true }]);
    let entryId = '';
    return [
      async () =>
        ({ entryId } = await stock.treatPlace(
          sent({ placeId: coldId, product: 'Soap', applicator: 'Robin', treatedAt: '2026-02-20T12:00:00Z' }),
        )),
      () => stock.reverseEntry(sent({ entryId })),
    ];
  },
  'a source that is another plant': async (nursery, story) => {
    await story.addLot({ units: 10 });
    await aBatch(nursery, story);
    const otherId = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    await story.order([{ units: 15 }]);
    let entryId = '';
    return [
      async () =>
        ({ entryId } = await nursery
          .as('grower')
          .stock.reIdentifySource(sent({ sourceId: story.sourceId, plantId: otherId, happenedOn }))),
      () => nursery.as('grower').stock.reverseEntry(sent({ entryId })),
    ];
  },
  'a plant that is a cultivar': async (nursery, story) => {
    await set(nursery, 'source', `origin = 'wild'`);
    await story.addLot({ units: 10 });
    await story.order([{ units: 8, wildType: true }]);
    const name = (scientificName: string) => () =>
      nursery.as('grower').plants.editPlant(sent({ plantId: story.plantId, scientificName }));
    return [name(`Asclepias tuberosa 'Hello Yellow'`), name('Asclepias tuberosa')];
  },
};
