import { sources } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadSource } from '../../store.ts';
import { requireCleaned, requireSeedDay } from '../describe-seed.ts';
import { requireSeedKind } from '../require-seed.ts';
import { addCleaned, insertSeedMovements } from '../store.ts';

export const receiveSeed = command({
  name: 'receiveSeed',
  input: sources.receiveSeed,
  roles: FIELD,
  run: async (context, { sourceId, kind, grams, happenedOn, note }) => {
    const source = await loadSource(context, sourceId);
    requireSeedKind(source);
    if (source.retired) refuse('source-retired', { source: source.code }, 'sourceId');
    requireSeedDay(context, happenedOn, source.gatheredOn);
    requireCleaned(source.rawGrams, (source.cleanedGrams ?? 0) + grams, 'grams');
    const [movementId = ''] = await insertSeedMovements(context, [{ sourceId, kind, grams, happenedOn, note }]);
    await addCleaned(context, sourceId, grams, happenedOn);
    return { movementId };
  },
});
