import { randomUUID } from 'node:crypto';
import { sent } from '../../../support/nursery.ts';
import { type Edit, set } from './edit.ts';

const happenedOn = '2026-05-20';

/** Edits of places, containers, rules and lots. */
export const stockEdits: Record<string, Edit> = {
  'a place turned into quarantine and back': async (nursery, story) => {
    await story.addLot({ units: 10 });
    await story.order([{ units: 8 }]);
    const turn = (kind: 'bench' | 'quarantine') => () =>
      nursery.as('grower').stock.editPlace(sent({ placeId: story.placeId, code: 'BENCH', kind }));
    return [turn('quarantine'), turn('bench')];
  },
  'plants moved into quarantine': async (nursery, story) => {
    const lotId = await story.addLot({ units: 10 });
    await story.order([{ units: 8 }]);
    const move = (placeId: string, toPlaceId: string) => () =>
      nursery.as('crew').stock.moveLot(sent({ lotId, placeId, units: 6, toPlaceId, happenedOn }));
    return [move(story.placeId, story.quarantineId), move(story.quarantineId, story.placeId)];
  },
  'the last plants lost': async (nursery, story) => {
    const lotId = await story.addLot({ units: 10 });
    await story.order([{ units: 8 }]);
    let entryId = '';
    return [
      async () => ({ entryId } = await story.lose(lotId, 10)),
      () => nursery.as('grower').stock.reverseEntry(sent({ entryId })),
    ];
  },
  'what stood out in the cold lost': async (nursery, story) => {
    const frameId = await story.addPlace({ code: 'FRAME', kind: 'cold-frame', winterCover: true });
    const { potLife, stock } = nursery.as('grower');
    await potLife.setFreezeDay(sent({ freezeMd: '05-28' }));
    await potLife.addRule(
      sent({
        ruleId: randomUUID(),
        basis: 'no-winter' as const,
        span: null,
        reach: { plantId: story.plantId },
        winterCarry: null,
      }),
    );
    const lotId = await story.addLot({ units: 10 });
    await stock.moveLot(sent({ lotId, placeId: story.placeId, units: 8, toPlaceId: frameId, happenedOn }));
    await story.order([{ units: 8 }], { dueOn: '2026-06-20' });
    return [
      () =>
        nursery
          .as('crew')
          .stock.loseFromLot(sent({ lotId, placeId: story.placeId, units: 2, cause: 'winter' as const, happenedOn })),
    ];
  },
  'plants pulled and planted': async (nursery, story) => {
    const lotId = await story.addLot({ units: 10 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    const { gardens } = nursery.as('crew');
    return [
      () => story.pull(orderId, [{ lineId, lotId, units: 5 }]),
      () =>
        gardens.plantOrder(
          sent({
            orderId,
            happenedOn,
            rows: [{ lineId, lotId, units: 4, extra: { from: 'place' as const, placeId: story.placeId, units: 2 } }],
          }),
        ),
      () =>
        gardens.returnFromOrder(
          sent({ orderId, happenedOn, placeId: story.placeId, rows: [{ lineId, lotId, returnedUnits: 1 }] }),
        ),
    ];
  },
  'a rule for the pot': async (nursery, story) => {
    await story.addLot({ units: 10 });
    await story.order([{ units: 8 }]);
    const ruleId = randomUUID();
    const { potLife } = nursery.as('grower');
    return [
      () =>
        potLife.addRule(
          sent({
            ruleId,
            basis: 'container' as const,
            span: 'P40D',
            reach: { plantId: story.plantId },
            winterCarry: null,
          }),
        ),
      () => potLife.editRule(sent({ ruleId, span: 'P60D', winterCarry: null })),
      () => potLife.editRule(sent({ ruleId, span: 'P40D', winterCarry: null })),
      () => potLife.retireRule(sent({ ruleId })),
    ];
  },
  'planting windows of a region': async (nursery, story) => {
    await set(nursery, 'site', `region = 'IA'`);
    await story.addLot({ units: 10, plantByOn: '2026-09-30' });
    await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
    const windowId = randomUUID();
    const { potLife } = nursery.as('grower');
    const days = { opensMd: '04-15', maxContainerMl: null, region: 'IA' };
    return [
      () => potLife.addWindow(sent({ windowId, ...days, closesMd: '06-15' })),
      () => potLife.editWindow(sent({ windowId, ...days, closesMd: '07-15' })),
    ];
  },
  'the size of a pot': async (nursery, story) => {
    await set(nursery, 'site', `region = 'IA'`);
    const { plants, potLife } = nursery.as('grower');
    const days = { opensMd: '04-15', region: 'IA' };
    await potLife.addWindow(sent({ windowId: randomUUID(), ...days, closesMd: '07-15', maxContainerMl: null }));
    await potLife.addWindow(sent({ windowId: randomUUID(), ...days, closesMd: '06-15', maxContainerMl: 2000 }));
    await story.addLot({ units: 10, plantByOn: '2026-09-30' });
    await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
    return [3000, 1000].map(
      (volumeMl) => () =>
        plants.editContainer(
          sent({
            containerId: story.containerId,
            name: 'Tall',
            volumeMl,
            depthMm: 200,
            widthMm: null,
            lengthMm: null,
            cells: null,
            tradeClass: null,
            note: '',
          }),
        ),
    );
  },
  'cells of a tray': async (nursery, story) => {
    const containerId = await story.addContainer({ code: 'plug-50', kind: 'tray', volumeMl: 110, cells: 50 });
    await story.addLot({ units: 100, containerId });
    await story.order([{ units: 100, containerId }]);
    return [72, 50].map(
      (cells) => () =>
        nursery.as('grower').plants.editContainer(
          sent({
            containerId,
            name: 'Plugs',
            volumeMl: 110,
            depthMm: 200,
            widthMm: null,
            lengthMm: null,
            cells,
            tradeClass: null,
            note: '',
          }),
        ),
    );
  },
};
