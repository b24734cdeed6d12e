import { plants } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { found } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { deleteName, loadName, recallVernacularName } from '../store.ts';

/** Takes a synonym or common name off a plant. Its accepted name can only be changed, since a plant without one is none. */
export const removePlantName = command({
  name: 'removePlantName',
  input: plants.removePlantName,
  roles: GROWERS,
  run: async (context, { nameId }) => {
    const stored = await loadName(context, nameId);
    const name = found(stored?.kind === 'scientific' ? null : stored, 'plant name', 'nameId');
    await deleteName(context, nameId);
    if (name.kind === 'common') await recallVernacularName(context, name.plantId, name.name);
    context.touched.features.add('plants');
    return { plantId: name.plantId };
  },
});
