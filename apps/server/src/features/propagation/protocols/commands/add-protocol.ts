import { propagation } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadPlant } from '../../../plants/store.ts';
import { draftContent } from '../draft.ts';
import { findTwin, insertProtocol, insertVersion } from '../store.ts';

/** How a plant is propagated by a method, in its first version. */
export const addProtocol = command({
  name: 'addProtocol',
  input: propagation.addProtocol,
  roles: GROWERS,
  run: async (context, input) => {
    const { protocolId, versionId, plantId, method, label, changeNote } = input;
    const plant = await loadPlant(context, plantId);
    if (plant.isRetired) found(null, 'plant', 'plantId');
    const twin = await findTwin(context, plantId, method, label);
    if (twin)
      refuse('protocol-exists', { plant: plant.scientificName, method, label, isRetired: twin.isRetired }, 'label');
    const content = await draftContent(context, method, plant.dormantMonths, input);
    await insertProtocol(context, { protocolId, plantId, method, label });
    await insertVersion(context, {
      ...content,
      versionId,
      protocolId,
      number: 1,
      standing: 'own setting',
      source: null,
      changeNote,
    });
    context.touched.features.add('propagation');
    return { protocolId, versionId, number: 1 };
  },
});
