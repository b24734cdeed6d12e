import { createHash, randomBytes } from 'node:crypto';
import type { Role } from '@rootclock/domain';
import type { TestNursery } from './nursery.ts';

/** As much of a nursery as is needed to sign its people in. */
export type SignedInNursery = Pick<TestNursery, 'nurseryId' | 'sql'> & {
  filesFolder?: string;
  clock: Pick<TestNursery['clock'], 'now'>;
  people: Record<Role, { personId: string }>;
};

/** A session as signing in would have opened it: signing in itself is its own journey. */
export async function sessionOf(nursery: SignedInNursery, role: Role, days = 1): Promise<string> {
  const token = randomBytes(32).toString('base64url');
  const hash = createHash('sha256').update(token).digest();
  const now = nursery.clock.now();
  const ends = new Date(now.getTime() + days * 86_400_000);
  await nursery.sql('SELECT open_token($1, $2, $3, $4, $5, $6)', [
    hash,
    'session',
    nursery.nurseryId,
    nursery.people[role].personId,
    now,
    ends,
  ]);
  return token;
}

export const cookieOf = async (...args: Parameters<typeof sessionOf>) =>
  `rootclock_session=${await sessionOf(...args)}`;
