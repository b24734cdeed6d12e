import type { gardens as english } from '../../en/gardens/index.ts';
import { planting } from './planting.ts';
import { pull } from './pull.ts';

export const gardens: typeof english = { pull, planting };
