import { countSpring } from './commands/count-spring.ts';
import { listNotUp } from './list-not-up.ts';
import { readLivingRates } from './read-living-rates.ts';
import { readSpringSheet } from './read-spring-sheet.ts';

export const winterOperations = { countSpring, listNotUp, readLivingRates, readSpringSheet };
