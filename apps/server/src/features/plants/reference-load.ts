import { referenceSettings } from '../../reference/index.ts';
import type { CommandContext } from '../../trpc/operation.ts';
import { insertContainers, loadContainerCodes } from './containers/store.ts';
import { insertNames } from './names/store.ts';
import { containerRows, factRows, nameRows, plantRows, ruleRows, windowRows } from './reference-load/rows.ts';
import { beginSettings, insertRules, insertWindows, loadPlantIds } from './reference-load/store.ts';
import { clocksChanged, insertPlants, loadCodes, putFacts } from './store.ts';

export { referenceId } from './reference-load/rows.ts';

export interface LoadedReference {
  plants: number;
  containers: number;
  rules: number;
  windows: number;
}

/**
 * Fills a nursery with the reference data, one statement a table. What is there already stays as the nursery left it, so that a later
 * version can bring more. Answers how much was added.
 */
export async function loadReferenceData(context: CommandContext): Promise<LoadedReference> {
  const { nurseryId } = context;
  await beginSettings(context, {
    freezeMd: referenceSettings.freezeMd.value,
    freezeStanding: referenceSettings.freezeMd.standing,
    noticeDays: referenceSettings.noticeDays.value,
  });
  const known = await loadPlantIds(context);
  const plants = await insertPlants(context, plantRows(nurseryId, await loadCodes(context), known));
  await insertNames(context, nameRows(nurseryId, plants));
  await putFacts(context, factRows(nurseryId, new Set([...known, ...plants])), { keep: true });
  const containers = await insertContainers(context, containerRows(nurseryId));
  const rules = await insertRules(context, ruleRows(nurseryId, await loadContainerCodes(context)));
  const windows = await insertWindows(context, windowRows(nurseryId));
  context.touched.features.add('plants').add('pot-life').add('people');
  await clocksChanged(context);
  return { plants: plants.size, containers, rules, windows };
}
