import { addPlant } from './commands/add-plant.ts';
import { editPlant } from './commands/edit-plant.ts';
import { restorePlant } from './commands/restore-plant.ts';
import { retirePlant } from './commands/retire-plant.ts';
import { setPlantFact } from './commands/set-plant-fact.ts';
import { addContainer } from './containers/commands/add-container.ts';
import { editContainer } from './containers/commands/edit-container.ts';
import { restoreContainer } from './containers/commands/restore-container.ts';
import { retireContainer } from './containers/commands/retire-container.ts';
import { listContainers } from './containers/reads.ts';
import { addPlantName } from './names/commands/add-plant-name.ts';
import { removePlantName } from './names/commands/remove-plant-name.ts';
import { findPlant } from './names/reads.ts';
import { readPlant } from './page/reads.ts';
import { listPlants } from './reads.ts';
import { listRegions } from './regions/reads.ts';

export const plantsOperations = {
  addPlant,
  editPlant,
  retirePlant,
  restorePlant,
  addPlantName,
  removePlantName,
  setPlantFact,
  addContainer,
  editContainer,
  retireContainer,
  restoreContainer,
  findPlant,
  listPlants,
  readPlant,
  listContainers,
  listRegions,
};
