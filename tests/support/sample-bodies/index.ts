import type { operations } from '../../../apps/server/src/features/operations.ts';
import type { SampleBodies, SampleIds } from './bodies.ts';
import { files } from './files.ts';
import { clients, gardens, orders, promisedOrders } from './gardens.ts';
import { planning } from './planning.ts';
import { plants } from './plants.ts';
import { propagation } from './propagation.ts';
import { sources } from './sources.ts';
import { stock } from './stock.ts';

export { type SampleIds, withIdsOf, withNewIds } from './bodies.ts';
export { addSampleRows, type SampleRows } from './rows.ts';

const people: SampleBodies<'people'> = {
  listPeople: () => [{}],
  addPerson: (ids) => [
    {
      personId: ids.made('personId'),
      name: 'New hand',
      email: `new-${ids.made('personId')}@example.test`,
      role: 'crew',
      password: 'ten characters',
    },
  ],
  changePerson: (ids) => [{ personId: ids.personId, name: 'Renamed', role: 'grower', ended: false }],
  listSecondSteps: () => [{}],
  removeSecondStep: (ids) => [{ personId: ids.personId }],
  editNursery: () => [
    { name: 'Renamed', zone: 'America/Chicago', region: 'IA', units: 'us', noticeDays: 30, seasonEndOn: '2026-10-15' },
  ],
};

const days = { opensMd: '09-01', closesMd: '10-15', maxContainerMl: null, region: null };
const terms = { span: 'P6M', winterCarry: null };

const potLife: SampleBodies<'potLife'> = {
  readBoard: (ids) => [{}, { plantId: ids.plantId }, { placeId: ids.placeId }],
  addRule: (ids) => [
    { ruleId: ids.made('ruleId'), basis: 'container', reach: { lotId: ids.lotId }, ...terms },
    {
      ruleId: ids.made('ruleId'),
      basis: 'container',
      reach: { plantId: ids.plantId, containerId: ids.containerId },
      ...terms,
    },
  ],
  editRule: (ids) => [{ ruleId: ids.ruleId, ...terms }],
  retireRule: (ids) => [{ ruleId: ids.ruleId }],
  listRules: () => [{}],
  addWindow: (ids) => [{ windowId: ids.made('windowId'), ...days }],
  editWindow: (ids) => [{ windowId: ids.windowId, ...days }],
  retireWindow: (ids) => [{ windowId: ids.windowId }],
  listWindows: () => [{}],
  setFreezeDay: () => [{ freezeMd: '11-10' }],
  previewChange: (ids) => [
    {
      change: {
        command: 'addRule',
        body: { ruleId: ids.made('ruleId'), basis: 'container', reach: { lotId: ids.lotId }, ...terms },
      },
    },
    {
      change: {
        command: 'addRule',
        body: {
          ruleId: ids.made('ruleId'),
          basis: 'container',
          reach: { plantId: ids.plantId, containerId: ids.containerId },
          ...terms,
        },
      },
    },
    { change: { command: 'editRule', body: { ruleId: ids.ruleId, ...terms } } },
    { change: { command: 'retireRule', body: { ruleId: ids.ruleId } } },
    { change: { command: 'editWindow', body: { windowId: ids.windowId, ...days } } },
    { change: { command: 'retireWindow', body: { windowId: ids.windowId } } },
    { change: { command: 'setFreezeDay', body: { freezeMd: '11-10' } } },
  ],
};

const promises: SampleBodies<'promises'> = {
  ...promisedOrders,
  pinReservation: (ids) => [{ lineId: ids.lineId, supplyId: ids.lotId, units: 2 }],
  unpinReservation: (ids) => [{ lineId: ids.pinnedLineId, supplyId: ids.lotId }],
  releaseReservation: (ids) => [{ lineId: ids.pinnedLineId, supplyId: ids.lotId }],
  offersFor: (ids) => [
    { lineId: ids.lineId },
    {
      plantId: ids.plantId,
      containerId: ids.containerId,
      on: '2026-06-01',
      siteId: ids.siteId,
      clientId: ids.clientId,
    },
  ],
  checkPromise: (ids) => [
    {
      plantId: ids.plantId,
      containerId: ids.containerId,
      on: '2026-06-01',
      siteId: ids.siteId,
      clientId: ids.clientId,
      units: 12,
    },
  ],
  explainLine: (ids) => [{ lineId: ids.lineId }],
  demandFor: (ids) => [{ supplyId: ids.lotId }, { supplyId: ids.batchId }],
  whatIf: (ids) => [
    { kind: 'move-order', orderId: ids.orderId, dueOn: '2026-06-20' },
    { kind: 'cancel-order', orderId: ids.stagedOrderId, placeId: ids.otherPlaceId },
    {
      kind: 'add-order',
      plantId: ids.plantId,
      containerId: ids.containerId,
      units: 200,
      dueOn: '2026-06-10',
      clientId: ids.clientId,
      siteId: ids.siteId,
    },
    { kind: 'lose-lot', lotId: ids.lotId, units: 2, placeId: ids.placeId },
    { kind: 'lose-batch', batchId: ids.batchId, units: 2, placeId: ids.placeId },
    { kind: 'change-batch', batchId: ids.batchId, cautiousUnits: 3, readyOn: '2026-07-01' },
    {
      kind: 'edit-line',
      lineId: ids.lineId,
      units: 9,
      alternatives: [{ plantId: ids.otherPlantId, containerId: ids.containerId }],
    },
    { kind: 'withdraw-line', lineId: ids.lineId },
    {
      kind: 'add-line',
      orderId: ids.orderId,
      lineId: ids.made('lineId'),
      plantId: ids.plantId,
      containerId: ids.containerId,
      units: 3,
      alternatives: [{ plantId: ids.otherPlantId, containerId: ids.containerId }],
    },
    { kind: 'pin', lineId: ids.lineId, supplyId: ids.lotId, units: 2 },
    { kind: 'unpin', lineId: ids.pinnedLineId, supplyId: ids.lotId },
    { kind: 'release', lineId: ids.pinnedLineId, supplyId: ids.lotId },
    { kind: 'natives-only', orderId: ids.orderId, nativesOnly: false },
  ],
  listShort: () => [{}],
  planState: () => [{}],
  listLosses: () => [{}],
  setLossAside: (ids) => [{ lossId: ids.lossId, note: 'The client knows.' }],
};

/** A body of each operation that it accepts, filled with the rows it is given. */
export const sampleBodies: { [Feature in keyof typeof operations]: SampleBodies<Feature> } = {
  people,
  files,
  plants,
  sources,
  stock,
  potLife,
  propagation,
  clients,
  orders,
  promises,
  gardens,
  planning,
};

/** The bodies of one operation by its path; none when there is no such sample. */
export function bodiesOf(path: string, ids: SampleIds): unknown[] {
  const [feature = '', name = ''] = path.split('.');
  const byPath = sampleBodies as unknown as Record<string, Record<string, (ids: SampleIds) => unknown[]>>;
  return byPath[feature]?.[name]?.(ids) ?? [];
}
