import { potLife } from '@rootclock/contracts';
import { STANDINGS, EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query } from '../../../../trpc/operation.ts';

const freezeDay = z.strictObject({ freezeMd: z.string(), freezeStanding: z.enum(STANDINGS), edition: z.number() });

const listedWindow = z.strictObject({
  id: z.string(),
  edition: z.number(),
  opensMd: z.string(),
  closesMd: z.string(),
  maxContainerMl: z.nullable(z.number()),
  region: z.nullable(z.string()),
  standing: z.enum(STANDINGS),
  source: z.nullable(z.string()),
  note: z.string(),
});

/** The planting windows that count, those for all plants first, and the freeze day. */
export const listWindows = query({
  name: 'listWindows',
  input: potLife.listWindows,
  roles: EVERYONE,
  read: async ({ tx, nurseryId }): Promise<potLife.WindowList> => {
    const windows = await tx.rows(listedWindow)`
      SELECT id::text, edition, opens_md AS "opensMd", closes_md AS "closesMd", max_container_ml AS "maxContainerMl", region, standing, source, note
        FROM planting_window WHERE nursery_id = ${nurseryId}::uuid AND retired_at IS NULL
       ORDER BY region NULLS FIRST, max_container_ml DESC NULLS FIRST, opens_md, id`;
    const nursery = await tx.row(freezeDay)`
      SELECT freeze_md AS "freezeMd", freeze_standing AS "freezeStanding", edition FROM nursery_settings WHERE id = ${nurseryId}::uuid`;
    return {
      windows,
      freezeMd: nursery?.freezeMd ?? '',
      freezeStanding: nursery?.freezeStanding ?? 'not found',
      edition: nursery?.edition ?? 1,
    };
  },
});
