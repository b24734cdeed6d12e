/** What happens once the server has opened a session: nothing of an earlier one may be seen, and the way leads to where it was cut off. */
import { useNavigate } from '@tanstack/react-router';
import { leaveSession } from '../../lib/session-turns.ts';
import { safeNext } from './safe-next.ts';

export function useEntering(): (next?: string) => void {
  const navigate = useNavigate();
  return (next) => {
    leaveSession();
    void navigate({ href: safeNext(next) });
  };
}
