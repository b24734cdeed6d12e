/**
 * What the address asks a new order for. Its first line: the item of a lot (`?lot=`), or a plant (`?plant=`) in a container (`?container=`), and
 * how many (`?units=`). Also the day (`?day=`) and the site (`?site=`).
 */
import { useQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { isCalendarDate } from '@rootclock/domain';
import { trpc } from '../../../lib/api/index.ts';
import type { Item } from '../../orders/pickers/item-pickers.tsx';

export interface Asked {
  line: Item & { units: number | null };
  dueOn: string;
  siteId: string;
}

export function useAskedItem(): { asked: Asked; isLoading: boolean } {
  const search: { lot?: string; plant?: string; container?: string; units?: unknown; day?: unknown; site?: string } =
    useSearch({ strict: false });
  const { lot: lotId, plant: plantId, container: containerId, units, day } = search;
  const lot = useQuery({ ...trpc.stock.readLot.queryOptions({ lotId: lotId ?? '' }), enabled: lotId !== undefined });
  const plant = useQuery({
    ...trpc.plants.readPlant.queryOptions({ plantId: plantId ?? '' }),
    enabled: plantId !== undefined && lotId === undefined,
  });
  const containers = useQuery({ ...trpc.plants.listContainers.queryOptions({}), enabled: containerId !== undefined });
  const { data: asked } = plant;
  const container = containers.data?.find(({ id }) => id === containerId);
  const item: Item = lot.data
    ? {
        plant: { id: lot.data.plant.id, scientificName: lot.data.plant.scientificName },
        container: { id: lot.data.container.id, name: lot.data.container.name },
      }
    : {
        plant: asked ? { id: asked.id, scientificName: asked.scientificName } : null,
        container: container ? { id: container.id, name: container.name } : null,
      };
  return {
    asked: {
      line: { ...item, units: typeof units === 'number' ? units : null },
      dueOn: typeof day === 'string' && isCalendarDate(day) ? day : '',
      siteId: search.site ?? '',
    },
    isLoading: lot.isLoading || plant.isLoading || containers.isLoading,
  };
}
