/** How plants get out of the nursery and into the ground. */
import { planting } from './planting.ts';
import { pull } from './pull.ts';

export const gardens = { pull, planting };
