/** Who is signed in, in which nursery, and what they may do. Known everywhere inside the shell, which waits for it. */
import { useSuspenseQuery } from '@tanstack/react-query';
import type { Role } from '@rootclock/domain';
import { trpc } from './client.ts';

export function useSession() {
  const { data } = useSuspenseQuery(trpc.people.me.queryOptions());
  return { ...data, /** The calendar day in the nursery's zone, as the server reckons it. */ today: data.nursery.today, mayBe: (roles: readonly Role[]): boolean => roles.includes(data.role) };
}

export type Session = ReturnType<typeof useSession>;
