import type { orders } from '@rootclock/contracts';
import type * as z from 'zod/mini';
import { refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadContainers } from '../../stock/lots/store.ts';
import { loadPlantNames } from '../lines/store.ts';
import { requireWholeTrays } from '../lines/whole-trays.ts';
import { isNameTaken } from './store.ts';

/** A kit has a name of its own, and each of its components exists, stands in it once and comes in whole trays. */
export async function checkKitInput(
  context: ReadContext,
  { kitId, name, components }: z.output<typeof orders.addKit>,
): Promise<void> {
  if (await isNameTaken(context, { kitId, name })) refuse('kit-name-taken', { name }, 'name');
  const names = await loadPlantNames(
    context,
    [...new Set(components.map(({ plantId }) => plantId))],
    'components.0.plantId',
  );
  const containers = await loadContainers(
    context,
    components.map(({ containerId }) => containerId),
    'components.0.containerId',
  );
  const seen = new Set<string>();
  for (const [at, { plantId, containerId, units }] of components.entries()) {
    const key = `${plantId}/${containerId}`;
    if (seen.has(key)) refuse('component-twice', { plant: names.get(plantId) ?? '' }, `components.${at}.plantId`);
    seen.add(key);
    requireWholeTrays(units, containers[at]?.cells ?? null, `components.${at}.units`);
  }
}
