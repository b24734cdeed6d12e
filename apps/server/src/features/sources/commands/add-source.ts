import { sources } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { found } from '../../../refusal.ts';
import { command } from '../../../trpc/operation.ts';
import { nextCodes } from '../codes-store.ts';
import { describeSource, yearOfSource } from '../describe.ts';
import { insertSources, loadPlantNames } from '../store.ts';
import { insertSeedMovements } from '../stores/store.ts';

export const addSource = command({
  name: 'addSource',
  input: sources.addSource,
  roles: FIELD,
  run: async (context, { plantId, ...input }) => {
    const plant = found((await loadPlantNames(context, [plantId])).get(plantId), 'plant', 'plantId');
    const fields = await describeSource(context, input, plant);
    const [code = ''] = await nextCodes(context, plant.code, yearOfSource(fields.gatheredOn, context.today), 1);
    await insertSources(context, [{ ...fields, id: input.sourceId, code, plantId }]);
    // Seed that is described with its weight is at hand, so nobody has to say it twice.
    if (fields.cleanedGrams) {
      await insertSeedMovements(context, [
        {
          sourceId: input.sourceId,
          kind: fields.kind === 'bought-seed' ? 'bought' : 'cleaned',
          grams: fields.cleanedGrams,
          happenedOn: fields.storedOn ?? context.today,
        },
      ]);
    }
    return { sourceId: input.sourceId, code };
  },
});
