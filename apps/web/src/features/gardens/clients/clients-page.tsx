/** The list of clients. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { clients as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useState } from 'react';
import { useNavigate } from '@tanstack/react-router';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useListSearch } from '../../../lib/list/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, RowLink } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { DataTable, FilterBar, Pager, type Column } from '../../../ui/table/index.ts';
import { GardensTabs } from '../../orders/gardens-tabs.tsx';
import { ClientSheet } from '../../clients/client-form.tsx';

const PER_PAGE = 50;
const LIST = { sort: 'name', filters: ['q'] } as const;

export function ClientsPage() {
  const { clients: words, ui } = useMessages();
  const { mayBe } = useSession();
  const navigate = useNavigate();
  const [adding, setAdding] = useState(false);
  const columns = useColumns();
  const list = useListSearch(LIST);
  const search = list.filter('q');
  const query = useQuery({
    ...trpc.gardens.listClients.queryOptions({ search, page: list.state.page, perPage: PER_PAGE }),
    placeholderData: keepPreviousData,
  });
  const add = mayBe(GROWERS) && (
    <Button look="primary" onClick={() => setAdding(true)}>
      {words.add}
    </Button>
  );
  const empty =
    search === '' ? (
      <EmptyState kind="nothing-yet" title={words.nothingYet} actions={add}>
        {words.nothingYetText}
      </EmptyState>
    ) : (
      <EmptyState
        kind="nothing-matches"
        title={words.nothingMatches}
        actions={<Button onClick={list.clearFilters}>{ui.clearFilters}</Button>}
      >
        {words.nothingMatchesText}
      </EmptyState>
    );
  return (
    <>
      <PageHeader title={words.title} actions={add} />
      <GardensTabs />
      <FilterBar
        search={{ label: words.searchLabel, value: search, onChange: list.onSearch }}
        set={0}
        onClear={list.clearFilters}
      />
      <Read query={query}>
        {(page) => (
          <>
            <DataTable
              caption={words.caption(page.total)}
              rows={page.rows}
              rowId={({ id }) => id}
              rowName={({ name }) => name}
              columns={columns}
              stale={query.isPlaceholderData}
              empty={empty}
            />
            <Pager page={page.page} perPage={PER_PAGE} total={page.total} onPage={list.onPage} />
          </>
        )}
      </Read>
      {adding && (
        <ClientSheet onClose={() => setAdding(false)} onSaved={({ id }) => void navigate({ to: paths.client(id) })} />
      )}
    </>
  );
}

function useColumns(): Column<contracts.ClientRow>[] {
  const { clients: words } = useMessages();
  const { dates } = useFormat();
  return [
    {
      key: 'name',
      header: words.name,
      title: true,
      cell: ({ id, name }) => <RowLink to={paths.client(id)}>{name}</RowLink>,
    },
    { key: 'contact', header: words.contact, cell: ({ phone, email }) => phone ?? email ?? '' },
    { key: 'sites', header: words.sites, cell: ({ sites }) => words.sitesCount(sites) },
    {
      key: 'orders',
      header: words.openOrders,
      cell: ({ openOrders, nextDueOn }) =>
        [words.ordersCount(openOrders), nextDueOn && words.nextOn(nextDueOn, dates.fromToday(nextDueOn))]
          .filter(Boolean)
          .join(', '),
    },
  ];
}
