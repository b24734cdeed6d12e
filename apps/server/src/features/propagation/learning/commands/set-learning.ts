import { propagation } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { editing } from '../../../../trpc/editing.ts';
import { learningEdits, loadLearningSettings, storeLearningSettings } from '../store.ts';

/** Nothing that was promised changes with it: what batches are expected to yield is stored with each and moves only by entries on it. */
export const setLearning = editing({
  name: 'setLearning',
  input: propagation.setLearning,
  roles: OWNER,
  edits: learningEdits,
  run: async (context, { priorWeight, evidenceLimit, planConfidencePercent, winterSurvivalPercent }) => {
    await storeLearningSettings(context, {
      priorWeight,
      evidenceLimit,
      planConfidence: planConfidencePercent / 100,
      winterSurvival: winterSurvivalPercent / 100,
    });
    context.touched.features.add('propagation').add('stock');
    return loadLearningSettings(context);
  },
});
