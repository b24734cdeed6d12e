import { intakeOperations } from './intake/operations.ts';
import { listLots } from './lots-table-reads.ts';
import { lotOperations } from './lots/operations.ts';
import { placesOperations } from './places/operations.ts';
import { treatLots } from './treatments/commands/treat-lots.ts';
import { treatPlace } from './treatments/commands/treat-place.ts';
import { winterOperations } from './winter/operations.ts';

export const stockOperations = {
  ...intakeOperations,
  ...placesOperations,
  listLots,
  ...lotOperations,
  treatLots,
  treatPlace,
  ...winterOperations,
};
