import { propagation } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { readPlants, type RecordPlant } from './record/reads.ts';
import { loadRecordedShares, type RecordedShares } from './record/shares.ts';
import { loadLearningSettings, type LearningSettings } from './store.ts';

export interface NurseryRecord {
  settings: LearningSettings;
  plants: RecordPlant[];
  shares: RecordedShares[];
}

/** What the nursery has learned of all its plants. Shares are weighed where they are shown, so that other settings can be tried without being saved. */
export const readRecord = query({
  name: 'readRecord',
  isHeavy: true,
  input: propagation.readRecord,
  roles: EVERYONE,
  read: async (context): Promise<NurseryRecord> => {
    const shares = await loadRecordedShares(context, 'all');
    return {
      settings: await loadLearningSettings(context),
      plants: await readPlants(context, [...new Set(shares.map(({ plantId }) => plantId))]),
      shares,
    };
  },
});
