import { EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query } from '../../trpc/operation.ts';

export interface NurseryRow {
  id: string;
  name: string;
  zone: string;
  region: string | null;
  units: 'metric' | 'us';
  currency: string;
  demo: boolean;
  noticeDays: number;
  seasonEndOn: string;
  freezeMd: string;
  freezeStanding: string;
  version: number;
}

export const readNursery = query({
  name: 'readNursery',
  input: z.object({}),
  roles: EVERYONE,
  read: async ({ tx, nurseryId, today }) => {
    const [row] = await tx.$queryRaw<NurseryRow[]>`
      SELECT id::text, name, zone, region, units, currency, demo, notice_days AS "noticeDays", season_end_on::text AS "seasonEndOn",
             freeze_md AS "freezeMd", freeze_standing AS "freezeStanding", version::int
        FROM nursery WHERE id = ${nurseryId}::uuid`;
    return { ...(row as NurseryRow), today };
  },
});
