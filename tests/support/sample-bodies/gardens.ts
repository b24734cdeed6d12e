import type { SampleBodies, SampleIds } from './bodies.ts';

const line = (ids: SampleIds) => ({
  plantId: ids.plantId,
  containerId: ids.containerId,
  units: 3,
  bedId: ids.bedId,
  alternatives: [{ plantId: ids.otherPlantId, containerId: ids.bigContainerId }],
});
const entry = ({ today, mark }: SampleIds) => ({ happenedOn: today, note: mark });

export const clients: SampleBodies<'clients'> = {
  addClient: (ids) => [{ clientId: ids.made('clientId'), name: 'Fen Hollow' }],
  editClient: (ids) => [{ clientId: ids.clientId, name: 'Fen Hollow' }],
  addSite: (ids) => [{ siteId: ids.made('siteId'), clientId: ids.clientId, name: 'South slope' }],
  editSite: (ids) => [{ siteId: ids.siteId, name: 'South slope' }],
  addBed: (ids) => [{ bedId: ids.made('bedId'), siteId: ids.siteId, name: 'Along the path' }],
  editBed: (ids) => [{ bedId: ids.bedId, name: 'Along the path' }],
};

export const orders: SampleBodies<'orders'> = {
  addOrder: (ids) => [
    {
      orderId: ids.made('orderId'),
      clientId: ids.clientId,
      siteId: ids.siteId,
      kind: 'installation',
      dueOn: '2026-06-10',
      lines: [{ lineId: ids.made('lineId'), ...line(ids) }],
    },
  ],
  editOrder: (ids) => [{ orderId: ids.orderId, note: 'ring first', nativesOnly: false }],
  addLine: (ids) => [{ orderId: ids.orderId, lineId: ids.made('lineId'), ...line(ids) }],
  withdrawLine: (ids) => [{ lineId: ids.lineId }],
  finishOrder: (ids) => [{ orderId: ids.orderId }],
  addSubstitutionRule: (ids) => [
    { ruleId: ids.made('ruleId'), kind: 'another-size', reach: { plantId: ids.plantId }, penalty: 2 },
    { ruleId: ids.made('ruleId'), kind: 'same-habit', reach: {}, penalty: 9 },
  ],
  editSubstitutionRule: (ids) => [{ ruleId: ids.substitutionRuleId, penalty: 4 }],
  retireSubstitutionRule: (ids) => [{ ruleId: ids.substitutionRuleId }],
  listSubstitutionRules: () => [{}],
  addKit: (ids) => [
    {
      kitId: ids.made('kitId'),
      name: 'Monarch bed',
      components: [
        { plantId: ids.plantId, containerId: ids.containerId, units: 3 },
        { plantId: ids.otherPlantId, containerId: ids.containerId, units: 2 },
      ],
    },
  ],
  editKit: (ids) => [
    {
      kitId: ids.kitId,
      name: 'Monarch bed',
      components: [{ plantId: ids.plantId, containerId: ids.bigContainerId, units: 3 }],
    },
  ],
  retireKit: (ids) => [{ kitId: ids.kitId }],
  addKitLines: (ids) => [
    { orderId: ids.orderId, kitId: ids.kitId, units: 2, bedId: ids.bedId, lineIds: [ids.made('lineId')] },
  ],
  listKits: () => [{}],
  alternativesFor: (ids) => [{ plantId: ids.plantId, containerId: ids.containerId, siteId: ids.siteId }],
};

export const gardens: SampleBodies<'gardens'> = {
  blankClient: (ids) => [{ clientId: ids.idleClientId }],
  listClients: (ids) => [{}, { search: ids.mark }],
  readClient: (ids) => [{ clientId: ids.clientId }],
  readSite: (ids) => [{ siteId: ids.siteId }],
  cancelOrder: (ids) => [{ orderId: ids.stagedOrderId, placeId: ids.otherPlaceId, ...entry(ids) }],
  issuePullList: (ids) => [{ orderId: ids.orderId }],
  readPullList: (ids) => [{ orderId: ids.orderId }],
  pullForOrder: (ids) => [
    {
      orderId: ids.orderId,
      rows: [{ lineId: ids.lineId, lotId: ids.lotId, placeId: ids.placeId, units: 2 }],
      ...entry(ids),
    },
  ],
  plantOrder: (ids) => [
    {
      orderId: ids.stagedOrderId,
      rows: [
        {
          lineId: ids.stagedLineId,
          lotId: ids.lotId,
          units: 1,
          extra: { from: 'place', placeId: ids.placeId, units: 1 },
        },
      ],
      ...entry(ids),
    },
  ],
  handOver: (ids) => [
    { orderId: ids.stagedOrderId, rows: [{ lineId: ids.stagedLineId, lotId: ids.lotId, units: 1 }], ...entry(ids) },
  ],
  returnFromOrder: (ids) => [
    {
      orderId: ids.stagedOrderId,
      placeId: ids.otherPlaceId,
      cause: 'mishandled',
      rows: [{ lineId: ids.stagedLineId, lotId: ids.lotId, returnedUnits: 1, lostUnits: 1 }],
      ...entry(ids),
    },
  ],
  listToPull: () => [{}],
};

/** What is asked of an order once plants are promised to it. */
export const promisedOrders = {
  editLine: (ids) => [
    {
      lineId: ids.lineId,
      units: 4,
      bedId: ids.bedId,
      alternatives: [{ plantId: ids.otherPlantId, containerId: ids.containerId }],
    },
  ],
  changeDay: (ids) => [{ orderId: ids.orderId, dueOn: '2026-06-03' }],
  listOrders: (ids) => [{}, { search: ids.mark, state: null }, { clientId: ids.clientId }],
  readOrder: (ids) => [{ orderId: ids.orderId }],
  checkKit: (ids) => [{ kitId: ids.kitId, on: '2026-06-01', siteId: ids.siteId, clientId: ids.clientId }],
} satisfies Partial<SampleBodies<'promises'>>;
