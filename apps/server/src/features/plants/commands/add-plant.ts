import { randomUUID } from 'node:crypto';
import { plants } from '@rootclock/contracts';
import { GROWERS, parseScientificName, plantCode, requireDormantMonths } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';
import { command } from '../../../trpc/operation.ts';
import { requireNewScientificName } from '../names/refusals.ts';
import { findBearers, insertNames, keyOfName } from '../names/store.ts';
import { factsOf } from '../own-facts.ts';
import { clocksChanged, insertPlants, loadCodes, putFacts } from '../store.ts';

export const addPlant = command({
  name: 'addPlant',
  input: plants.addPlant,
  roles: GROWERS,
  run: async (context, { plantId, scientificName, code, ...traits }) => {
    const name = parseScientificName(scientificName);
    requireDormantMonths('dormantMonths', traits.dormantMonths);
    requireNewScientificName(
      name.scientificName,
      await findBearers(context, keyOfName('scientific', name.scientificName)),
      'scientificName',
    );
    const codes = await loadCodes(context);
    if (code && codes.has(code)) refuse('code-taken', { code }, 'code');
    const plant = { id: plantId, code: code ?? plantCode(name.scientificName, codes), ...name, ...traits };
    const added = await insertPlants(context, [plant]);
    if (added.size === 0) refuse('id-taken', { what: 'plant' }, 'plantId');
    const common =
      traits.vernacularName === ''
        ? []
        : [
            {
              id: randomUUID(),
              plantId,
              kind: 'common' as const,
              name: traits.vernacularName,
              standing: 'own setting' as const,
            },
          ];
    await insertNames(context, [
      { id: randomUUID(), plantId, kind: 'scientific', name: name.scientificName, standing: 'own setting' },
      ...common,
    ]);
    await putFacts(context, factsOf(plantId, traits));
    context.touched.features.add('plants');
    await clocksChanged(context);
    return { plantId, code: plant.code };
  },
});
