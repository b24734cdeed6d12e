/** What the address asks the first line of a new order for: the item of a lot (`?lot=`) or a plant (`?plant=`). */
import { useQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { trpc } from '../../../lib/api/index.ts';
import type { Item } from '../pickers/item-pickers.tsx';

export function useAskedItem(): { item: Item; isLoading: boolean } {
  const { lot: lotId, plant: plantId }: { lot?: string; plant?: string } = useSearch({ strict: false });
  const lot = useQuery({ ...trpc.stock.readLot.queryOptions({ lotId: lotId ?? '' }), enabled: lotId !== undefined });
  const plant = useQuery({ ...trpc.plants.readPlant.queryOptions({ plantId: plantId ?? '' }), enabled: plantId !== undefined && lotId === undefined });
  const { data: asked } = plant;
  const item: Item = lot.data
    ? { plant: { id: lot.data.plant.id, scientificName: lot.data.plant.scientificName }, container: { id: lot.data.container.id, name: lot.data.container.name } }
    : { plant: asked ? { id: asked.id, scientificName: asked.scientificName } : null, container: null };
  return { item, isLoading: lot.isLoading || plant.isLoading };
}
