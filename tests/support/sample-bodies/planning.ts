import type { SampleBodies } from './bodies.ts';

export const planning: SampleBodies<'planning'> = {
  addExpectedDemand: (ids) => [
    {
      demandId: ids.made('demandId'),
      plantId: ids.plantId,
      containerId: ids.containerId,
      wanted: '2027-spring',
      units: 120,
      unitValueMinor: 650,
      note: ids.mark,
    },
  ],
  editExpectedDemand: (ids) => [
    { demandId: ids.demandId, plantId: ids.plantId, containerId: ids.bigContainerId, wanted: '2027-04-15', units: 80 },
  ],
  withdrawExpectedDemand: (ids) => [{ demandId: ids.demandId }],
  listExpectedDemand: (ids) => [{}, { state: 'all', plantId: ids.plantId }],
  readPlan: () => [{}, { confidence: 0.8 }],
  readOutlook: (ids) => [{}, { item: { plantId: ids.plantId, containerId: ids.containerId }, weeks: 30 }],
  listTasks: (ids) => [
    { from: ids.today, until: '2026-06-30' },
    { from: ids.today, until: '2026-06-30', placeId: ids.placeId, kinds: ['pull', 'cover'] },
  ],
  tickTask: (ids) => [{ key: `cover/${ids.closedPlaceId}/2026`, doneOn: ids.today }],
  untickTask: (ids) => [{ key: `cover/${ids.closedPlaceId}/2026` }],
};
