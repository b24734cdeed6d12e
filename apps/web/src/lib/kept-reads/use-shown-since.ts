import { type Query, useQueryClient } from '@tanstack/react-query';
import { useSyncExternalStore } from 'react';
import { readFailure } from '../api/failure.ts';
import { useOnline } from '../outbox/index.ts';
import { keptReads } from './index.ts';

const isUnanswered = (error: unknown) => error !== null && readFailure(error).class === 'retry';

/** Everybody is who they are: how old that is says nothing about the page. */
const isOfPage = ({ queryKey: [path] }: Query) => Array.isArray(path) && path[0] !== 'people';

/** The instant at which the oldest of what is on the page was read, where the server cannot be asked for newer; else null. */
export function useShownSince(): number | null {
  const reads = useQueryClient().getQueryCache();
  const online = useOnline();
  return useSyncExternalStore(
    (listener) => reads.subscribe(listener),
    () => {
      const old = reads.findAll({ type: 'active', predicate: isOfPage }).filter(({ state, queryHash }) => {
        if (state.data === undefined) return false;
        return !online || keptReads.isShown(queryHash) || isUnanswered(state.error ?? state.fetchFailureReason);
      });
      return old.length === 0 ? null : Math.min(...old.map(({ state }) => state.dataUpdatedAt));
    },
  );
}
