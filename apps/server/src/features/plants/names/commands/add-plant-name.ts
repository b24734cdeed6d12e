import { plants } from '@rootclock/contracts';
import { GROWERS, parseScientificName } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadPlant } from '../../store.ts';
import { findBearers, insertNames, keyOfName, loadName } from '../store.ts';

/** Another name of a plant. A common name may be other plants' too; the answer then says which. */
export const addPlantName = command({
  name: 'addPlantName',
  input: plants.addPlantName,
  roles: GROWERS,
  run: async (context, { nameId, plantId, kind, name }) => {
    const plant = await loadPlant(context, plantId);
    if (kind === 'synonym') parseScientificName(name, 'name');
    const key = keyOfName(kind, name);
    if (key === '') refuse('invalid-input', { issues: [{ path: 'name', problem: 'wrong-form' }] }, 'name');
    if (await loadName(context, nameId)) refuse('id-taken', { what: 'plant name' }, 'nameId');
    const bearers = await findBearers(context, key);
    const isItsOwn = bearers.some(
      (bearer) => bearer.plantId === plantId && (bearer.kind === kind || bearer.kind === 'scientific'),
    );
    if (isItsOwn) refuse('name-taken', { name, plant: plant.scientificName }, 'name');
    const accepted = bearers.find((bearer) => kind === 'synonym' && bearer.kind === 'scientific');
    if (accepted)
      refuse(
        'plant-exists',
        { plant: accepted.scientificName, code: accepted.code, isRetired: accepted.isRetired },
        'name',
      );
    await insertNames(context, [{ id: nameId, plantId, kind, name, standing: 'own setting' }]);
    context.touched.features.add('plants');
    const others = bearers
      .filter((bearer) => bearer.plantId !== plantId)
      .map((bearer) => ({ plantId: bearer.plantId, scientificName: bearer.scientificName }));
    return { nameId, alsoMeans: others };
  },
});
