import { sources } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadSource } from '../../store.ts';
import { requireSeedDay } from '../describe-seed.ts';
import { requireSeed, requireSeedKind } from '../require-seed.ts';
import { insertSeedMovements } from '../store.ts';

/** Seed that is given away, thrown away or used up by a test. A retired source may still be emptied. */
export const takeSeed = command({
  name: 'takeSeed',
  input: sources.takeSeed,
  roles: FIELD,
  run: async (context, { sourceId, reason, grams, happenedOn, note }) => {
    const source = await loadSource(context, sourceId);
    requireSeedKind(source);
    requireSeedDay(context, happenedOn, source.gatheredOn);
    await requireSeed(context, [{ source, grams, field: 'grams' }]);
    const [movementId = ''] = await insertSeedMovements(context, [
      { sourceId, kind: reason, grams: -grams, happenedOn, note },
    ]);
    return { movementId };
  },
});
