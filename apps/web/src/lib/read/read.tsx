/**
 * Read: the three lives of a query in one place. `<Read query={useQuery(trpc.stock.lot.queryOptions({ lotId }))}>{(lot) => …}</Read>`
 * shows a skeleton after 300 ms, what went wrong with a way to try again, or the answer. An answer once shown stays in sight
 * when asking again fails; the line's state is the shell's to tell.
 */
import type { UseQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../../ui/action/index.ts';
import { EmptyState, Skeleton } from '../../ui/feedback/index.ts';
import { readFailure } from '../api/failure.ts';
import { sentenceOf } from '../api/sentences.ts';

export interface ReadProps<Data> {
  query: UseQueryResult<Data, unknown>;
  /** Lines of the skeleton. */
  lines?: number;
  children: (data: Data) => ReactNode;
}

export function Read<Data>({ query, lines = 5, children }: ReadProps<Data>) {
  if (query.data !== undefined) return <>{children(query.data)}</>;
  if (query.isError) return <ReadFailed error={query.error} onRetry={() => void query.refetch()} />;
  return <Skeleton lines={lines} />;
}

export function ReadFailed({ error, onRetry }: { error: unknown; onRetry: () => void }) {
  const { ui, shell } = useMessages();
  const failure = readFailure(error);
  const mayRetry = failure.class === 'retry' || failure.class === 'fault';
  const titles = {
    'not-allowed': shell.noAccessTitle,
    'not-found': shell.notFoundTitle,
    'no-answer': shell.noAnswerTitle,
  };
  const title = failure.code in titles ? titles[failure.code as keyof typeof titles] : shell.brokenTitle;
  return (
    <EmptyState kind="failed" title={title} actions={mayRetry && <Button onClick={onRetry}>{ui.tryAgain}</Button>}>
      {sentenceOf(failure)}
      {failure.code === 'no-answer' && <p>{shell.notKept}</p>}
    </EmptyState>
  );
}
