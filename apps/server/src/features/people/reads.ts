import { people } from '@rootclock/contracts';
import { EVERYONE, OWNER } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query } from '../../trpc/operation.ts';
import { loadSecondSteps } from './second-step/store.ts';
import { loadMembers } from './store.ts';

export const nurseryRow = z.strictObject({
  id: z.string(),
  edition: z.number(),
  name: z.string(),
  zone: z.string(),
  region: z.nullable(z.string()),
  units: z.enum(['metric', 'us']),
  currency: z.string(),
  demo: z.boolean(),
  noticeDays: z.number(),
  seasonEndOn: z.string(),
  freezeMd: z.string(),
  freezeStanding: z.string(),
  version: z.number(),
});
export type NurseryRow = z.infer<typeof nurseryRow>;

export const readNursery = query({
  name: 'readNursery',
  input: z.object({}),
  roles: EVERYONE,
  read: async ({ tx, nurseryId, today }) => {
    const row = await tx.row(nurseryRow)`
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
