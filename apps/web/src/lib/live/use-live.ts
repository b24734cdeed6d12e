/**
 * Two people at work see each other's entries within seconds: the server says which features changed, the stale reads are asked
 * for again. While the tab is hidden the stream is closed (browsers allow few of them); coming back heals the gap.
 */
import { useEffect } from 'react';
import { markStale } from '../api/features.ts';
import { queryClient } from '../api/query-client.ts';
import { heal, type Heard, type LiveWord } from './heal.ts';

/** Entries of a potting session come in a burst; one round of reads serves them all. */
const GATHER_MS = 150;

function readWord(text: string): LiveWord | null {
  const word: unknown = JSON.parse(text);
  if (typeof word !== 'object' || word === null || !('version' in word) || typeof word.version !== 'number') return null;
  const features = 'features' in word && Array.isArray(word.features) ? word.features.filter((each): each is string => typeof each === 'string') : undefined;
  return { version: word.version, ...(features ? { features } : {}) };
}

export function useLive(): void {
  useEffect(() => {
    let stream: EventSource | null = null;
    let heard: Heard = { version: null };
    let opened = false;
    let gathering: ReturnType<typeof setTimeout> | null = null;
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
      if (stale === 'all' || stale.length > 0) gathering ??= setTimeout(flush, GATHER_MS);
    };
    const take = (event: MessageEvent<string>) => {
      const word = readWord(event.data);
      if (!word) return;
      const healed = heal(heard, word);
      heard = healed.heard;
      gather(healed.stale);
    };
    const open = () => {
      if (stream || document.hidden) return;
      stream = new EventSource('/live');
      stream.addEventListener('change', take);
      stream.addEventListener('beat', take);
      // A stream that comes back may have missed words of a server that forgot its own count while restarting.
      stream.addEventListener('open', () => {
        if (opened) gather('all');
        opened = true;
      });
    };
    const close = () => {
      stream?.close();
      stream = null;
    };
    const follow = () => (document.hidden ? close() : open());

    open();
    document.addEventListener('visibilitychange', follow);
    return () => {
      document.removeEventListener('visibilitychange', follow);
      if (gathering) clearTimeout(gathering);
      close();
    };
  }, []);
}
