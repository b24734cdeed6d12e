import { randomUUID } from 'node:crypto';
import { plants } from '@rootclock/contracts';
import { GROWERS, parseScientificName, requireDormantMonths } from '@rootclock/domain';
import { editing } from '../../../trpc/editing.ts';
import { type CommandContext } from '../../../trpc/operation.ts';
import { requireNewScientificName } from '../names/refusals.ts';
import { findBearers, insertNames, keyOfName, replaceScientificName } from '../names/store.ts';
import { factsOf } from '../own-facts.ts';
import {
  clocksChanged,
  loadPlant,
  plantEdits,
  type PlantTraits,
  putFacts,
  type StoredPlant,
  updatePlant,
} from '../store.ts';

/** Changes what is given; the code stays, since it stands on labels. The name a plant had becomes its synonym. */
export const editPlant = editing({
  name: 'editPlant',
  input: plants.editPlant,
  roles: GROWERS,
  edits: plantEdits,
  run: async (context, { plantId, scientificName, ...given }) => {
    const before = await loadPlant(context, plantId);
    const name = parseScientificName(
      scientificName ?? `${before.scientificName} ${before.scientificNameAuthorship}`.trim(),
    );
    const traits: PlantTraits = { ...traitsOf(before), ...defined(given) };
    requireDormantMonths('dormantMonths', traits.dormantMonths);
    if (name.scientificName !== before.scientificName) await rename(context, before, name.scientificName);
    if (traits.vernacularName !== '' && traits.vernacularName !== before.vernacularName) {
      await insertNames(context, [
        { id: randomUUID(), plantId, kind: 'common', name: traits.vernacularName, standing: 'own setting' },
      ]);
    }
    await updatePlant(context, plantId, name, traits);
    await putFacts(context, factsOf(plantId, traits, before));
    context.touched.features.add('plants');
    await clocksChanged(context);
    return { plantId };
  },
});

async function rename(context: CommandContext, before: StoredPlant, name: string): Promise<void> {
  const others = (await findBearers(context, keyOfName('scientific', name))).filter(
    ({ plantId }) => plantId !== before.id,
  );
  requireNewScientificName(name, others, 'scientificName');
  await replaceScientificName(context, before.id, name);
  // Mere spelling leaves no synonym: both would be found under the same key.
  if (keyOfName('scientific', name) === keyOfName('scientific', before.scientificName)) return;
  const old = `${before.scientificName} ${before.scientificNameAuthorship}`.trim();
  await insertNames(context, [
    { id: randomUUID(), plantId: before.id, kind: 'synonym', name: old, standing: 'own setting' },
  ]);
}

function traitsOf({
  vernacularName,
  family,
  rootHabit,
  larvalHost,
  dormantMonths,
  lastEmergenceMd,
  yearOfFirstBloom,
  nativeRegions,
  handling,
}: StoredPlant): PlantTraits {
  return {
    vernacularName,
    family,
    rootHabit,
    larvalHost,
    dormantMonths,
    lastEmergenceMd,
    yearOfFirstBloom,
    nativeRegions,
    handling,
  };
}

/** Without what was not given. */
function defined<Given extends object>(given: Given) {
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as {
    [Key in keyof Given]: Exclude<Given[Key], undefined>;
  };
}
