import type { SampleBodies } from './bodies.ts';

const measures = {
  name: 'Two litres',
  volumeMl: 2000,
  depthMm: 180,
  widthMm: 150,
  lengthMm: 150,
  cells: null,
  tradeClass: null,
  note: '',
};

export const plants: SampleBodies<'plants'> = {
  addPlant: (ids) => [{ plantId: ids.made('plantId'), scientificName: 'Zizia aurea', rootHabit: 'fibrous' }],
  editPlant: (ids) => [{ plantId: ids.plantId, vernacularName: 'butterfly milkweed' }],
  retirePlant: (ids) => [{ plantId: ids.idlePlantId }],
  restorePlant: (ids) => [{ plantId: ids.retiredPlantId }],
  addPlantName: (ids) => [{ nameId: ids.made('nameId'), plantId: ids.plantId, kind: 'common', name: 'pleurisy root' }],
  removePlantName: (ids) => [{ nameId: ids.nameId }],
  setPlantFact: (ids) => [{ plantId: ids.plantId, field: 'sun', value: 'full sun' }],
  loadReference: () => [{}],
  addContainer: (ids) => [{ containerId: ids.made('containerId'), code: 'two-l', kind: 'pot', ...measures }],
  editContainer: (ids) => [{ containerId: ids.containerId, ...measures }],
  retireContainer: (ids) => [{ containerId: ids.idleContainerId }],
  restoreContainer: (ids) => [{ containerId: ids.retiredContainerId }],
  findPlant: (ids) => [{ text: ids.mark }, { text: `Asclepias ${ids.mark}` }],
  listPlants: (ids) => [{}, { text: ids.mark, retired: true }],
  readPlant: (ids) => [{ plantId: ids.plantId }],
  listContainers: () => [{}, { retired: true }],
  listRegions: () => [{}],
};
