import { countSpring } from './commands/count-spring.ts';
import { listNotUp } from './queries/list-not-up.ts';
import { readLivingRates } from './queries/read-living-rates.ts';
import { readSpringSheet } from './queries/read-spring-sheet.ts';

export const winterOperations = { countSpring, listNotUp, readLivingRates, readSpringSheet };
