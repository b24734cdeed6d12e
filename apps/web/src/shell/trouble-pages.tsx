/** What is shown in place of a page: for an address that leads nowhere, and for a page that broke. */
import { useRouter } from '@tanstack/react-router';
import { TRPCClientError } from '@trpc/client';
import { ReadFailed } from '../lib/read/index.ts';
import { paths } from '../lib/paths.ts';
import { useMessages } from '../messages/index.ts';
import { Button, ButtonLink } from '../ui/action/index.ts';
import { EmptyState } from '../ui/feedback/index.ts';
import { PageHeader } from '../ui/layout/index.ts';

export function NotFoundPage() {
  const { shell } = useMessages();
  return (
    <>
      <PageHeader title={shell.notFoundTitle} />
      <EmptyState
        kind="nothing-matches"
        title={shell.notFoundText}
        actions={<ButtonLink to={paths.today()}>{shell.toStart}</ButtonLink>}
      />
    </>
  );
}

export function BrokenPage({ error, reset }: { error: unknown; reset: () => void }) {
  const { shell, ui } = useMessages();
  const router = useRouter();
  const again = () => {
    reset();
    void router.invalidate();
  };
  return (
    <>
      <PageHeader title={shell.brokenTitle} />
      {error instanceof TRPCClientError ? (
        <ReadFailed error={error} onRetry={again} />
      ) : (
        <EmptyState kind="failed" title={shell.brokenText} actions={<Button onClick={again}>{ui.tryAgain}</Button>} />
      )}
    </>
  );
}
