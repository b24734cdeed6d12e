import { propagation } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadLearningSettings, storeLearningSettings } from '../store.ts';

/** Nothing that was promised changes with it: what batches are expected to yield is stored with each and moves only by entries on it. */
export const setLearning = command({
  name: 'setLearning',
  input: propagation.setLearning,
  roles: OWNER,
  run: async (context, { priorWeight, evidenceLimit, planConfidencePercent, winterSurvivalPercent }) => {
    await storeLearningSettings(context, { priorWeight, evidenceLimit, planConfidence: planConfidencePercent / 100, winterSurvival: winterSurvivalPercent / 100 });
    context.touched.features.add('propagation').add('stock');
    return loadLearningSettings(context);
  },
});
