import { useQuery } from '@tanstack/react-query';
import { trpc } from '../../../lib/api/index.ts';

/** The code of a place that was chosen before; null where none was, or it is gone since. */
export function usePlaceCode(placeId: string): string | null {
  const { data } = useQuery(trpc.stock.listPlaces.queryOptions({}));
  return data?.find((place) => place.placeId === placeId)?.code ?? null;
}
