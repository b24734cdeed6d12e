/** The list of garden orders: the next day first, each with its state in a word and its numbers. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { GROWERS } from '@rootclock/domain';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useListSearch } from '../../../lib/list/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, ButtonLink } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { Pager } from '../../../ui/table/index.ts';
import { GardensTabs } from '../../orders/gardens-tabs.tsx';
import { OrderFilters } from './order-filters.tsx';
import { ORDER_LIST, orderQuestion, PER_PAGE } from './order-search.ts';
import { OrderTable } from './order-table.tsx';

export function OrdersPage() {
  const { orders, ui } = useMessages();
  const words = orders.list;
  const { mayBe } = useSession();
  const list = useListSearch(ORDER_LIST);
  const query = useQuery({
    ...trpc.promises.listOrders.queryOptions(orderQuestion(list.state)),
    placeholderData: keepPreviousData,
  });
  // Whether there is any order at all tells an empty beginning from finished work; asked only when the list is empty.
  const any = useQuery({
    ...trpc.promises.listOrders.queryOptions({ state: null, perPage: 1 }),
    enabled: query.data?.total === 0,
  });
  const add = mayBe(GROWERS) && (
    <ButtonLink to={paths.newOrder()} look="primary">
      {words.add}
    </ButtonLink>
  );
  const isFiltered = list.filtersSet > 0 || list.filter('q') !== '';

  const empty = () => {
    if (isFiltered)
      return (
        <EmptyState
          kind="nothing-matches"
          title={words.nothingMatches}
          actions={<Button onClick={list.clearFilters}>{ui.clearFilters}</Button>}
        >
          {words.nothingMatchesText}
        </EmptyState>
      );
    if (any.data && any.data.total > 0)
      return (
        <EmptyState kind="all-done" title={words.allDone}>
          {words.allDoneText}
        </EmptyState>
      );
    return any.data ? (
      <EmptyState kind="nothing-yet" title={words.nothingYet} actions={add}>
        {words.nothingYetText}
      </EmptyState>
    ) : null;
  };

  return (
    <>
      <PageHeader title={words.title} facts={words.lead} actions={add} />
      <GardensTabs />
      <OrderFilters list={list} />
      <Read query={query}>
        {(page) => (
          <>
            <OrderTable
              rows={page.rows}
              caption={words.caption(page.total)}
              sort={list.sort}
              onSort={list.onSort}
              stale={query.isPlaceholderData}
              empty={empty()}
            />
            <Pager page={page.page} perPage={PER_PAGE} total={page.total} onPage={list.onPage} />
          </>
        )}
      </Read>
    </>
  );
}
