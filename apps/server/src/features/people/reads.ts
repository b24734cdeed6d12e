import { people } from '@rootclock/contracts';
import { EVERYONE, OWNER } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query } from '../../trpc/operation.ts';
import { loadSecondSteps } from './second-step/store.ts';
import { loadMembers } from './store.ts';

export interface NurseryRow {
  id: string;
  edition: number;
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
      SELECT id::text, edition, name, zone, region, units, currency, demo, notice_days AS "noticeDays", season_end_on::text AS "seasonEndOn",
             freeze_md AS "freezeMd", freeze_standing AS "freezeStanding", version::int
        FROM nursery WHERE id = ${nurseryId}::uuid`;
    return { ...(row as NurseryRow), today };
  },
});

/** Everybody who is or was of the nursery. Addresses are personal: only owners, who invite and end people, see the list. */
export const listPeople = query({
  name: 'listPeople',
  input: people.listPeople,
  roles: OWNER,
  read: (context): Promise<people.PersonRow[]> => loadMembers(context),
});

/** Who is asked for a code after the password, for owners: whoever loses their phone turns to them. */
export const listSecondSteps = query({
  name: 'listSecondSteps',
  input: people.listSecondSteps,
  roles: OWNER,
  read: ({ tx }): Promise<string[]> => loadSecondSteps(tx),
});
