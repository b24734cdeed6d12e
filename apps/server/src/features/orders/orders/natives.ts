import { isNativeTo } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadNatives } from '../lines/store.ts';

export interface AskedRegion {
  nativesOnly: boolean;
  region: string | null;
  siteName: string | null;
}

/** The region that says what is native; an order for natives cannot do without. */
export function requireRegion({ region, siteName }: Omit<AskedRegion, 'nativesOnly'>): string {
  return region ?? refuse('natives-need-region', { site: siteName }, 'nativesOnly');
}

/** Where an order takes only natives, every plant named is known to be one; the first that is not is said beside its field. */
export async function requireNatives(
  context: ReadContext,
  order: AskedRegion,
  named: readonly { plantId: string; field: string }[],
): Promise<void> {
  if (!order.nativesOnly) return;
  const region = requireRegion(order);
  const plants = await loadNatives(
    context,
    named.map(({ plantId }) => plantId),
  );
  for (const { plantId, field } of named) {
    const plant = plants.get(plantId);
    if (plant && !isNativeTo(plant.nativeRegions, region))
      refuse('not-native-here', { plant: plant.scientificName, region }, field);
  }
}
