/**
 * Two people at work see each other's entries within seconds: the server says which features changed, the stale reads are asked
 * for again. While the tab is hidden the stream is closed (browsers allow few of them); coming back heals the gap.
 */
import { useEffect } from 'react';
import { trpc } from '../api/client.ts';
import { markStale } from '../api/features.ts';
import { queryClient } from '../api/query-client.ts';
import { LiveLine } from './line.ts';
import { subscribeAt } from './subscribe.ts';

/** Entries of a potting session come in a burst; one round of reads serves them all. */
const GATHER_MS = 150;

const after = (ms: number, run: () => void) => {
  const timer = setTimeout(run, ms);
  return () => clearTimeout(timer);
};

const subscribe = subscribeAt('/trpc');

export function useLive(): void {
  useEffect(() => {
    let gathering: (() => void) | null = null;
    let gathered: 'all' | Set<string> = new Set();

    const flush = () => {
      gathering = null;
      if (gathered === 'all') void queryClient.invalidateQueries();
      else markStale(queryClient, [...gathered]);
      gathered = new Set();
    };
    const gather = (stale: 'all' | readonly string[]) => {
      if (stale === 'all') gathered = 'all';
      else if (gathered !== 'all') for (const feature of stale) gathered.add(feature);
      if (stale === 'all' || stale.length > 0) gathering ??= after(GATHER_MS, flush);
    };
    const line = new LiveLine({
      subscribe,
      after,
      chance: Math.random,
      stale: gather,
      // Said by a read, so that there is one way in which a page learns that its session is over.
      signedOut: () => void queryClient.invalidateQueries({ queryKey: trpc.people.me.queryKey() }),
    });
    const follow = () => (document.hidden ? line.close() : line.open());
    const hurry = () => line.hurry();

    follow();
    document.addEventListener('visibilitychange', follow);
    window.addEventListener('online', hurry);
    return () => {
      document.removeEventListener('visibilitychange', follow);
      window.removeEventListener('online', hurry);
      gathering?.();
      line.close();
    };
  }, []);
}
