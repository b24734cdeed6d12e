/**
 * `const list = useListSearch({ sort: 'plantBy', filters: ['q', 'place'] })`: the list's state from the address and the ways to
 * change it, in the shape that DataTable, FilterBar and Pager take. Pass `list.state` to the query; ask for the rows with
 * `placeholderData: keepPreviousData`, so that the old page stays (dimmed by `stale`) until the new one is there.
 */
import { useNavigate, useSearch } from '@tanstack/react-router';
import { useCallback, useMemo } from 'react';
import { readList, writeList, type ListDefaults, type ListState } from './list-search.ts';

export function useListSearch(defaults: ListDefaults) {
  const search: Record<string, unknown> = useSearch({ strict: false });
  const navigate = useNavigate();
  const known = JSON.stringify(defaults);
  const change = useCallback(
    (part: Partial<ListState>) =>
      void navigate({
        to: '.',
        search: (before: Record<string, unknown>) => writeList(before, JSON.parse(known) as ListDefaults, part),
        replace: !('page' in part),
        resetScroll: 'page' in part,
      }),
    [navigate, known],
  );
  const state = useMemo(() => readList(search, JSON.parse(known) as ListDefaults), [search, known]);
  const setFilter = useCallback(
    (name: string, value: string) => change({ filters: { ...state.filters, [name]: value } }),
    [change, state.filters],
  );
  const onSearch = useCallback((value: string) => setFilter('q', value), [setFilter]);
  return {
    state,
    sort: { key: state.sort, descending: state.descending },
    onSort: (sort: { key: string; descending: boolean }) => change({ sort: sort.key, descending: sort.descending }),
    onPage: (page: number) => change({ page }),
    filter: (name: string): string => state.filters[name] ?? '',
    setFilter,
    onSearch,
    /** How many filters besides the search are set. */
    filtersSet: Object.keys(state.filters).filter((name) => name !== 'q').length,
    clearFilters: () => change({ filters: {} }),
  };
}
