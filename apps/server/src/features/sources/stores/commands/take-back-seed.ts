import { sources } from '@rootclock/contracts';
import { FIELD, GROWERS, SEED_ARRIVALS } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command, type CommandContext } from '../../../../trpc/operation.ts';
import { countBatches } from '../../blends/store.ts';
import { loadSource, setSourceRetired } from '../../store.ts';
import {
  addCleaned,
  insertSeedMovements,
  loadMovement,
  loadMovementsOfCommand,
  loadSeedStores,
  type StoredMovement,
} from '../store.ts';

/**
 * Takes a booking of seed back, once. A blend is one booking: all its parts get their seed back and the blend is retired. Seed that an
 * entry used comes back only with that entry. Crew may take back what they booked themselves, growers everything.
 */
export const takeBackSeed = command({
  name: 'takeBackSeed',
  input: sources.takeBackSeed,
  roles: FIELD,
  run: async (context, { movementId, note }) => {
    const movement = found(await loadMovement(context, movementId), 'seed-movement', 'movementId');
    if (movement.kind === 'taken-back') refuse('reversal-is-final', undefined, 'movementId');
    if (movement.reversed) refuse('already-reversed', { kind: movement.kind }, 'movementId');
    if (movement.personId !== context.personId && !GROWERS.includes(context.role))
      refuse('not-allowed', { role: context.role, needs: [...GROWERS] });
    if (movement.entryId)
      refuse(
        'seed-of-entry',
        { source: await codeOf(context, movement.sourceId), grams: Math.abs(movement.grams) },
        'movementId',
      );
    const together = await loadMovementsOfCommand(context, movement.commandId);
    await requireStillThere(context, together);
    const blend = together.find(({ kind }) => kind === 'blended-in');
    if (blend) await undoBlend(context, blend);
    await insertSeedMovements(
      context,
      together.map(({ id, sourceId, grams }) => ({
        sourceId,
        kind: 'taken-back',
        grams: -grams,
        happenedOn: context.today,
        reversesId: id,
        note,
      })),
    );
    for (const { sourceId, kind, grams } of together)
      if (SEED_ARRIVALS.some((arrival) => arrival === kind)) await addCleaned(context, sourceId, -grams);
    return { movementIds: together.map(({ id }) => id) };
  },
});

const codeOf = async (context: CommandContext, sourceId: string): Promise<string> =>
  (await loadSource(context, sourceId)).code;

async function requireStillThere(context: CommandContext, movements: readonly StoredMovement[]): Promise<void> {
  const stores = await loadSeedStores(
    context,
    movements.map(({ sourceId }) => sourceId),
  );
  for (const { sourceId, grams } of movements) {
    const left = stores.get(sourceId)?.grams ?? 0;
    if (grams > left) refuse('seed-has-gone', { source: await codeOf(context, sourceId), grams, left }, 'movementId');
  }
}

/** A blend that something grows from stays, even where its seed was never weighed out for it. */
async function undoBlend(context: CommandContext, { sourceId }: StoredMovement): Promise<void> {
  const batches = await countBatches(context, sourceId);
  if (batches > 0) refuse('blend-in-use', { source: await codeOf(context, sourceId), batches }, 'movementId');
  await setSourceRetired(context, sourceId, context.now);
}
