import type { plants } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { referenceRegions } from '../../reference/index.ts';
import { query } from '../../trpc/operation.ts';

const namedRegion = z.strictObject({ code: z.string() });

/** Regions whose native plants are known here: those of the reference data, and any that a plant of the nursery names. */
export const listRegions = query({
  name: 'listRegions',
  input: z.strictObject({}),
  roles: EVERYONE,
  read: async ({ tx, nurseryId }): Promise<plants.RegionRow[]> => {
    const named = await tx.rows(namedRegion)`
      SELECT DISTINCT region AS code FROM plant p, unnest(p.native_regions) region WHERE p.nursery_id = ${nurseryId}::uuid ORDER BY 1`;
    const known = new Set<string>(referenceRegions.map(({ code }) => code));
    return [
      ...referenceRegions,
      ...named.filter(({ code }) => !known.has(code)).map(({ code }) => ({ code, name: code })),
    ];
  },
});
