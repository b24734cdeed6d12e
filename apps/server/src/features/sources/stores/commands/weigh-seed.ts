import { sources } from '@rootclock/contracts';
import { FIELD, toMilligram } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadSource } from '../../store.ts';
import { requireSeedDay } from '../describe-seed.ts';
import { requireSeedKind } from '../require-seed.ts';
import { insertSeedMovements, loadSeedStores } from '../store.ts';

/**
 * What the balance says holds: the difference is booked, however large. Only a weighing from before seed last moved is refused, since it
 * cannot be told from the difference what that movement had done to it.
 */
export const weighSeed = command({
  name: 'weighSeed',
  input: sources.weighSeed,
  roles: FIELD,
  run: async (context, { sourceId, grams, happenedOn, note }) => {
    const source = await loadSource(context, sourceId);
    requireSeedKind(source);
    requireSeedDay(context, happenedOn, source.gatheredOn);
    const store = (await loadSeedStores(context, [sourceId])).get(sourceId);
    if (store?.lastOn && happenedOn < store.lastOn)
      refuse('day-too-early', { day: happenedOn, earliest: store.lastOn }, 'happenedOn');
    const difference = toMilligram(grams - (store?.grams ?? 0));
    if (difference === 0) return { movementId: null, difference };
    const [movementId = ''] = await insertSeedMovements(context, [
      { sourceId, kind: 'weighed', grams: difference, happenedOn, note },
    ]);
    return { movementId, difference };
  },
});
