// What every test file begins with. One seed for every property test, so that a run that failed can be run again:
// ROOTCLOCK_SEED=<seed> ROOTCLOCK_RUNS=<runs> npm test.
import { parseRows } from '@rootclock/server/db/statements';
import fc from 'fast-check';
import { wholeNumber } from './tries.ts';

const DEFAULT_SEED = 20_261_124;

const runs = wholeNumber('ROOTCLOCK_RUNS');
fc.configureGlobal({
  seed: wholeNumber('ROOTCLOCK_SEED') ?? DEFAULT_SEED,
  ...(runs === undefined ? {} : { numRuns: runs }),
});

// Each row that the database answers is held against what its statement says of it.
parseRows();
