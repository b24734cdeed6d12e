import { countSpring } from './commands/count-spring.ts';
import { listNotUp } from './queries/list-not-up.ts';
import { readLivingRates } from './queries/read-living-rates.ts';

export const winterOperations = { countSpring, listNotUp, readLivingRates };
