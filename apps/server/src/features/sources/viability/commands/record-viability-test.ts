import { sources } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadSource } from '../../store.ts';
import { requireSeedDay } from '../../stores/describe-seed.ts';
import { requireSeedKind } from '../../stores/require-seed.ts';
import { agreementOf, meanShareOf } from '../agreement.ts';
import { insertTest } from '../store.ts';

/** Shares are stored to the millionth, so a sum is judged there too. */
const MILLION = 1_000_000;

/** A test whose replicates disagree is kept and marked: what was counted was counted, but no figure should rest on it while there is a better one. */
export const recordViabilityTest = command({
  name: 'recordViabilityTest',
  input: sources.recordViabilityTest,
  roles: FIELD,
  run: async (context, { testId, ...input }) => {
    const source = await loadSource(context, input.sourceId);
    requireSeedKind(source);
    requireSeedDay(context, input.testedOn, source.gatheredOn, 'testedOn');
    input.replicates.forEach((sound, at) => {
      if (sound > input.seedsPerReplicate)
        refuse('replicate-over-seeds', { sound, seeds: input.seedsPerReplicate }, `replicates.${at}`);
    });
    const hard = Math.round(input.hardShare * MILLION);
    const dormant = Math.round(input.dormantShare * MILLION);
    const mean = Math.round(meanShareOf(input) * MILLION);
    // Three roundings may pass the whole by one millionth, which nobody counted.
    if (mean + hard + dormant > MILLION + 1)
      refuse(
        'shares-over-whole',
        { germinated: mean / MILLION, hard: hard / MILLION, dormant: dormant / MILLION },
        'hardShare',
      );
    const meanShare = Math.min(mean, MILLION - hard - dormant) / MILLION;
    const { toRepeat, rangePercent, tolerancePercent } = agreementOf(input);
    await insertTest(context, {
      id: testId,
      ...input,
      hardShare: hard / MILLION,
      dormantShare: dormant / MILLION,
      meanShare,
      toRepeat,
    });
    return { testId, meanShare, toRepeat, rangePercent, tolerancePercent };
  },
});
