/** Lets the browser keep the app, so that it opens without a line. */
import type { Query, QueryClient } from '@tanstack/react-query';

const ADDRESS = '/service-worker.js';

/** Who one is comes before every page, and is none of it. */
const isOfPage = ({ queryKey: [path] }: Query) => !(Array.isArray(path) && path.join('.') === 'people.me');

/** Resolves when a page has read something and nothing is being read any more. */
function whenRead(client: QueryClient): Promise<void> {
  const reads = client.getQueryCache();
  const isDone = () =>
    client.isFetching() === 0 &&
    reads.getAll().some((read) => isOfPage(read) && read.isActive() && read.state.status !== 'pending');
  return new Promise((resolve) => {
    const stop = reads.subscribe(() => {
      if (!isDone()) return;
      stop();
      resolve();
    });
  });
}

/** Resolves once the first page no longer needs the line and the processor for itself. */
export async function whenQuiet(client: QueryClient): Promise<void> {
  await whenRead(client);
  await new Promise<void>((resolve) => {
    if ('requestIdleCallback' in window) window.requestIdleCallback(() => resolve());
    else setTimeout(resolve);
  });
}

/** Browsers have no workers on plain http; there the app needs a line to open. */
export async function keepShell(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  try {
    await navigator.serviceWorker.register(ADDRESS, { updateViaCache: 'none' });
  } catch {
    // Some private windows forbid it: the app works, but needs a line to open.
  }
}
