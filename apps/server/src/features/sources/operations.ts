import { blendSources } from './blends/commands/blend-sources.ts';
import { addSource } from './commands/add-source.ts';
import { editSource } from './commands/edit-source.ts';
import { restoreSource } from './commands/restore-source.ts';
import { retireSource } from './commands/retire-source.ts';
import { listSources } from './reads.ts';
import { receiveSeed } from './stores/commands/receive-seed.ts';
import { takeBackSeed } from './stores/commands/take-back-seed.ts';
import { takeSeed } from './stores/commands/take-seed.ts';
import { weighSeed } from './stores/commands/weigh-seed.ts';
import { readSource } from './trace-reads.ts';
import { recordViabilityTest } from './viability/commands/record-viability-test.ts';
import { withdrawViabilityTest } from './viability/commands/withdraw-viability-test.ts';

export const sourcesOperations = {
  addSource,
  blendSources,
  editSource,
  listSources,
  readSource,
  receiveSeed,
  recordViabilityTest,
  restoreSource,
  retireSource,
  takeBackSeed,
  takeSeed,
  weighSeed,
  withdrawViabilityTest,
};
