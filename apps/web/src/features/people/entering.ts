/** What happens once the server has opened a session: nothing of an earlier one may be seen, and the way leads to where it was cut off. */
import { useNavigate } from '@tanstack/react-router';
import { paths } from '../../lib/paths.ts';
import { leaveSession } from '../../lib/session/index.ts';

/** Only addresses of this app are followed: `next` stands in an address that anybody could have written. */
export function safeNext(next: string | undefined): string {
  return next !== undefined && /^\/(?![/\\])/.test(next) ? next : paths.today();
}

export function useEntering(): (next?: string) => void {
  const navigate = useNavigate();
  return (next) => {
    leaveSession();
    void navigate({ href: safeNext(next) });
  };
}
