/** The beds of a site; none while no site is chosen. */
import { useQuery } from '@tanstack/react-query';
import type { clients } from '@rootclock/contracts';
import { trpc } from '../../../lib/api/index.ts';

export function useBeds(siteId: string | null): readonly clients.BedRow[] {
  const { data } = useQuery({
    ...trpc.gardens.readSite.queryOptions({ siteId: siteId ?? '' }),
    enabled: siteId !== null,
  });
  return data?.beds ?? [];
}
