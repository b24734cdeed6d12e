import { sent } from '../../../support/nursery.ts';
import { type Edit, set } from './edit.ts';

const happenedOn = '2026-05-20';

/** Edits of orders, clients, sites and of what is tied to lines. */
export const orderEdits: Record<string, Edit> = {
  'where a plant is native': async (nursery, story) => {
    await set(nursery, 'site', `region = 'IA'`);
    await set(nursery, 'plant', `native_regions = '{IA}'`);
    await story.addLot({ units: 10 });
    const { orderId } = await story.order([{ units: 8 }]);
    const { clients, orders, plants } = nursery.as('grower');
    await orders.editOrder(sent({ orderId, note: '', nativesOnly: true }));
    const native = (nativeRegions: string[]) => () => plants.editPlant(sent({ plantId: story.plantId, nativeRegions }));
    const region = (code: string) => () =>
      clients.editSite(sent({ siteId: story.siteId, name: 'South slope', region: code }));
    return [native(['WI']), region('WI'), region('IA'), native(['IA'])];
  },
  'an order for natives': async (nursery, story) => {
    await set(nursery, 'site', `region = 'IA'`);
    const otherId = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    await set(nursery, 'plant', `native_regions = '{IA}'`);
    await story.addLot({ units: 4 });
    await story.addLot({ units: 10, plantId: otherId });
    const { orderId } = await story.order([
      { units: 8, alternatives: [{ plantId: otherId, containerId: story.containerId, penalty: 1 }] },
    ]);
    await nursery.sql(`UPDATE plant SET native_regions = '{}' WHERE nursery_id = $1 AND id = $2`, [
      nursery.nurseryId,
      otherId,
    ]);
    return [true, false].map(
      (nativesOnly) => () => nursery.as('grower').orders.editOrder(sent({ orderId, note: '', nativesOnly })),
    );
  },
  "a client's lead": async (nursery, story) => {
    await story.addLot({ units: 10, plantByOn: '2026-06-05' });
    await story.order([{ units: 8 }], { kind: 'pickup' });
    return [14, 0].map(
      (leadDays) => () =>
        nursery.as('grower').clients.editClient(sent({ clientId: story.clientId, name: 'Fen Hollow', leadDays })),
    );
  },
  'an order on another day': async (nursery, story) => {
    await story.addLot({ units: 10, plantByOn: '2026-06-15' });
    const { orderId } = await story.order([{ units: 8 }], { dueOn: '2026-06-10' });
    await story.order([{ units: 8 }], { dueOn: '2026-06-10' });
    const move = (day: string) => () =>
      nursery.as('grower').promises.changeDay(sent({ orderId, dueOn: day, acceptedShortages: [] }));
    return [
      async () =>
        nursery.as('grower').promises.changeDay(
          sent({
            orderId,
            dueOn: '2026-06-20',
            acceptedShortages: [{ lineId: (await story.read(orderId)).lineRows[0]?.id ?? '', units: 8 }],
          }),
        ),
      move('2026-06-12'),
    ];
  },
  'an order cancelled': async (nursery, story) => {
    await story.addLot({ units: 10 });
    const { orderId } = await story.order([{ units: 8 }]);
    await story.order([{ units: 8 }]);
    return [() => nursery.as('grower').gardens.cancelOrder(sent({ orderId, happenedOn, placeId: story.placeId }))];
  },
  'a lot held and released': async (nursery, story) => {
    const lotId = await story.addLot({ units: 10 });
    await story.order([{ units: 8 }]);
    const { stock } = nursery.as('grower');
    return [
      () => stock.holdMany(sent({ lotIds: [lotId], reason: 'inspector' as const, happenedOn })),
      () => stock.releaseLot(sent({ lotId, reason: 'inspector' as const, releaseReason: 'Seen.', happenedOn })),
    ];
  },
  'another stand-in': async (nursery, story) => {
    const bigId = await story.addContainer({ code: 'big-4l', volumeMl: 4000 });
    await story.addLot({ units: 4 });
    await story.addLot({ units: 10, containerId: bigId });
    const { lineId } = await story.order([{ units: 8 }]);
    const edit = (alternatives: { plantId: string; containerId: string; penalty: number }[]) => () =>
      nursery
        .as('grower')
        .promises.editLine(sent({ lineId, units: 8, alternatives, acceptedShortages: [{ lineId, units: 4 }] }));
    return [edit([{ plantId: story.plantId, containerId: bigId, penalty: 3 }]), edit([])];
  },
  'conditions of a line': async (nursery, story) => {
    await set(nursery, 'source', `kind = 'bought-plants'`);
    await story.addLot({ units: 10 });
    const { lineId } = await story.order([{ units: 8 }]);
    const edit = (asks: { untreated?: boolean; seedZone?: string; wildType?: boolean }) => () =>
      nursery
        .as('grower')
        .promises.editLine(sent({ lineId, units: 8, ...asks, acceptedShortages: [{ lineId, units: 8 }] }));
    return [
      edit({ untreated: true }),
      edit({}),
      edit({ seedZone: '3a' }),
      edit({}),
      edit({ wildType: true }),
      edit({}),
    ];
  },
  'a line for more': async (nursery, story) => {
    await story.addLot({ units: 10 });
    const { lineId } = await story.order([{ units: 8 }]);
    return [5, 9].map((units) => () => nursery.as('grower').promises.editLine(sent({ lineId, units })));
  },
  'a line withdrawn': async (nursery, story) => {
    await story.addLot({ units: 10 });
    const { lineId } = await story.order([{ units: 8 }]);
    await story.order([{ units: 8 }]);
    return [() => nursery.as('grower').orders.withdrawLine(sent({ lineId }))];
  },
  'a root ball that fell apart': async (nursery, story) => {
    const lotId = await story.addLot({ units: 10 });
    await story.order([{ units: 8 }]);
    const check =
      (result: 'holds' | 'not-yet', readyOn: string | null = null) =>
      () =>
        nursery
          .as('crew')
          .stock.observeMany(sent({ lotIds: [lotId], kind: 'root-ball' as const, result, readyOn, happenedOn }));
    return [check('not-yet'), check('holds'), check('not-yet', '2026-06-10'), check('not-yet', '2026-05-30')];
  },
  'plants released by hand and tied again': async (nursery, story) => {
    const lotId = await story.addLot({ units: 10 });
    const { lineId } = await story.order([{ units: 8 }]);
    const { promises } = nursery.as('grower');
    return [
      () => promises.releaseReservation(sent({ lineId, supplyId: lotId })),
      () => promises.pinReservation(sent({ lineId, supplyId: lotId, units: 8 })),
    ];
  },
};
