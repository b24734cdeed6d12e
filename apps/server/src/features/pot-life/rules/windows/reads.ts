import { potLife } from '@rootclock/contracts';
import { EVERYONE, type Standing } from '@rootclock/domain';
import { query } from '../../../../trpc/operation.ts';

/** The planting windows that count, those for all plants first, and the freeze day. */
export const listWindows = query({
  name: 'listWindows',
  input: potLife.listWindows,
  roles: EVERYONE,
  read: async ({ tx, nurseryId }): Promise<potLife.WindowList> => {
    const windows = await tx.$queryRaw<potLife.WindowRow[]>`
      SELECT id::text, edition, opens_md AS "opensMd", closes_md AS "closesMd", max_container_ml AS "maxContainerMl", region, standing, source, note
        FROM planting_window WHERE nursery_id = ${nurseryId}::uuid AND retired_at IS NULL
       ORDER BY region NULLS FIRST, max_container_ml DESC NULLS FIRST, opens_md, id`;
    const [nursery] = await tx.$queryRaw<{ freezeMd: string; freezeStanding: Standing; edition: number }[]>`
      SELECT freeze_md AS "freezeMd", freeze_standing AS "freezeStanding", edition FROM nursery WHERE id = ${nurseryId}::uuid`;
    return {
      windows,
      freezeMd: nursery?.freezeMd ?? '',
      freezeStanding: nursery?.freezeStanding ?? 'not found',
      edition: nursery?.edition ?? 1,
    };
  },
});
