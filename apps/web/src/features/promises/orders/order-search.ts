/** What the list of orders asks the server for, read from the page's address. */
import { promises } from '@rootclock/contracts';
import { isCalendarDate, ORDER_KINDS, ORDER_STATES } from '@rootclock/domain';
import type { ListState } from '../../../lib/list/list-search.ts';

const FILTERS = ['q', 'state', 'kind', 'from', 'to', 'short'] as const;
export const ORDER_LIST = { sort: 'due', filters: FILTERS } as const;
export const PER_PAGE = 50;

/** The value if it is one of those known; addresses are typed by hand too. */
const known = <Value extends string>(values: readonly Value[], text: string | undefined): Value | null =>
  values.find((value) => value === text) ?? null;
const day = (text: string | undefined): string | null => (text !== undefined && isCalendarDate(text) ? text : null);

/** Open orders unless the address asks for others; `any` stands for all. */
export function orderQuestion({ page, sort, descending, filters }: ListState) {
  return {
    search: filters['q'] ?? '',
    state: filters['state'] === 'any' ? null : (known(ORDER_STATES, filters['state']) ?? ('open' as const)),
    kind: known(ORDER_KINDS, filters['kind']),
    dueFrom: day(filters['from']),
    dueTo: day(filters['to']),
    shortOnly: filters['short'] === 'yes',
    sort: known(promises.ORDER_SORTS, sort) ?? ('due' as const),
    descending,
    page,
    perPage: PER_PAGE,
  };
}
