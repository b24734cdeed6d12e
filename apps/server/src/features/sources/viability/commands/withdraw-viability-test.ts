import { sources } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadTest, withdrawTest } from '../store.ts';

/** A test that was wrong counts no longer and stays readable. */
export const withdrawViabilityTest = command({
  name: 'withdrawViabilityTest',
  input: sources.withdrawViabilityTest,
  roles: GROWERS,
  run: async (context, { testId }) => {
    const test = found(await loadTest(context, testId), 'test', 'testId');
    if (test.withdrawn) refuse('test-already-withdrawn', undefined, 'testId');
    await withdrawTest(context, testId);
    return { testId };
  },
});
