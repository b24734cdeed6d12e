/** Who is signed in, in which nursery, and what they may do. Known everywhere inside the shell, which waits for it. */
import { useSuspenseQuery } from '@tanstack/react-query';
import type { Role } from '@rootclock/domain';
import { useDayHere } from '../clock/index.ts';
import { trpc } from './client.ts';

export function useSession() {
  const { data } = useSuspenseQuery(trpc.people.me.queryOptions());
  const today = useDayHere() ?? data.nursery.today;
  return {
    ...data,
    /** The calendar day in the nursery's zone: it turns at the nursery's midnight, by the server's clock, while the page stays open. */
    today,
    mayBe: (roles: readonly Role[]): boolean => roles.includes(data.role),
  };
}

export type Session = ReturnType<typeof useSession>;
