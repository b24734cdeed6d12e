/** PlanMark: promises are still being worked out after what was booked. It goes by itself when they are. */
import { useQuery } from '@tanstack/react-query';
import { trpc } from '../../lib/api/index.ts';
import { useMessages } from '../../messages/index.ts';
import { Callout } from '../../ui/feedback/index.ts';

export function PlanMark({ about }: { about: 'page' | 'answer' }) {
  const { promises } = useMessages();
  const { data } = useQuery(trpc.promises.planState.queryOptions({}));
  if (!data?.staleSince) return null;
  return (
    <div role="status" className={about === 'page' ? 'page-notice' : undefined}>
      <Callout tone="note">{promises.plan[about]}</Callout>
    </div>
  );
}
