import { addPlace } from './commands/add-place.ts';
import { closePlace } from './commands/close-place.ts';
import { editPlace } from './commands/edit-place.ts';
import { openPlace } from './commands/open-place.ts';
import { restorePlace } from './commands/restore-place.ts';
import { retirePlace } from './commands/retire-place.ts';
import { listPlaces, readPlace } from './reads.ts';

export const placesOperations = {
  addPlace,
  closePlace,
  editPlace,
  listPlaces,
  openPlace,
  readPlace,
  restorePlace,
  retirePlace,
};
