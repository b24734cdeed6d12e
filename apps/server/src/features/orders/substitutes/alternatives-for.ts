import { orders } from '@rootclock/contracts';
import { alternativesByRule, EVERYONE, rulesReaching } from '@rootclock/domain';
import { found } from '../../../refusal.ts';
import { query } from '../../../trpc/operation.ts';
import { loadSite } from '../../clients/store.ts';
import { readRules, readStandingItems, readSubstitutePlants } from './reads.ts';

/** What the nursery's rules offer while a line is being typed; nothing is stored until the line takes it. */
export const alternativesFor = query({
  name: 'alternativesFor',
  isHeavy: true,
  input: orders.alternativesFor,
  roles: EVERYONE,
  read: async (context, { plantId, containerId, siteId, nativesOnly }): Promise<orders.OfferedAlternatives> => {
    const region = siteId === null ? null : (await loadSite(context, siteId)).region;
    const plants = await readSubstitutePlants(context, plantId);
    const asked = found(
      plants.find((plant) => plant.plantId === plantId),
      'plant',
      'plantId',
    );
    const items = await readStandingItems(context, containerId);
    const rules = (await readRules(context)).map(({ id, kind, plantId: ofPlant, genus, penalty }) => ({
      id,
      kind,
      reach: { plantId: ofPlant, genus },
      penalty,
    }));
    const { alternatives, idle, notNative, untold } = alternativesByRule({
      asked: { plantId, containerId },
      rules,
      plants,
      items,
      region,
      nativesOnly,
    });
    const offered = alternatives.flatMap((alternative): orders.OfferedAlternative[] => {
      const item = items.find(
        (each) => each.plantId === alternative.plantId && each.containerId === alternative.containerId,
      );
      const plant = plants.find((each) => each.plantId === alternative.plantId);
      return item && plant ? [{ ...alternative, ...item, scientificName: plant.scientificName }] : [];
    });
    return {
      hasRules: rulesReaching(rules, asked).length > 0,
      region,
      alternatives: offered,
      idle: idle.map(({ kind, why, untold: traits }) => ({ kind, why, untold: traits })),
      notNative,
      untold,
    };
  },
});
