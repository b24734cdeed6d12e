import type { CommandContext } from '../../trpc/operation.ts';
import { insertContainers } from './containers/store.ts';
import { insertNames } from './names/store.ts';
import { containerRows, factRows, nameRows, plantRows } from './reference-rows.ts';
import { insertPlants, loadCodes, loadPlantIds, putFacts } from './store.ts';

export { referenceId } from './reference-rows.ts';

/**
 * Fills a nursery with the plants and containers of the reference data, one statement a table. What is there already stays as the
 * nursery left it, so that a later version can bring more. Answers how many were added.
 */
export async function loadReferencePlants(context: CommandContext): Promise<{ plants: number; containers: number }> {
  const { nurseryId } = context;
  const known = await loadPlantIds(context);
  const plants = await insertPlants(context, plantRows(nurseryId, await loadCodes(context), known));
  await insertNames(context, nameRows(nurseryId, plants));
  await putFacts(context, factRows(nurseryId, new Set([...known, ...plants])), { keep: true });
  const containers = await insertContainers(context, containerRows(nurseryId));
  return { plants: plants.size, containers };
}
