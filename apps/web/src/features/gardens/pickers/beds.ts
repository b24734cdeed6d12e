/** The beds of a site; none while no site is chosen. */
import { useQuery } from '@tanstack/react-query';
import type { gardens } from '@rootclock/contracts';
import { trpc } from '../../../lib/api/index.ts';

export function useBeds(siteId: string | null): readonly gardens.BedRow[] {
  const { data } = useQuery({
    ...trpc.gardens.readSite.queryOptions({ siteId: siteId ?? '' }),
    enabled: siteId !== null,
  });
  return data?.beds ?? [];
}
