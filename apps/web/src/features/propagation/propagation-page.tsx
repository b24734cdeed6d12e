/** All batches: what stands, what has come of it, and by when it must leave its cells. */
import { PROPAGATION_METHODS, FIELD } from '@rootclock/domain';
import { propagation as contracts } from '@rootclock/contracts';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { trpc, useSession } from '../../lib/api/index.ts';
import { useListSearch } from '../../lib/list/index.ts';
import { paths } from '../../lib/paths.ts';
import { Read } from '../../lib/read/index.ts';
import { useMessages } from '../../messages/index.ts';
import { ButtonLink } from '../../ui/action/index.ts';
import { EmptyState } from '../../ui/feedback/index.ts';
import { SelectField } from '../../ui/fields/index.ts';
import { PageHeader } from '../../ui/layout/index.ts';
import { DataTable, FilterBar, Pager } from '../../ui/table/index.ts';
import { PropagationTabs } from './propagation-tabs.tsx';
import { useBatchColumns } from './batch-columns.tsx';

const PER_PAGE = 25;
const oneOf = <Word extends string>(words: readonly Word[], text: string): Word | undefined =>
  words.find((word) => word === text);

export function PropagationPage() {
  const { propagation } = useMessages();
  const { list: say } = propagation;
  const { mayBe } = useSession();
  const list = useListSearch({ sort: 'plantBy', filters: ['q', 'state', 'method'] });
  const columns = useBatchColumns();
  const state = oneOf(contracts.BATCH_STATES, list.filter('state')) ?? 'open';
  const query = useQuery({
    ...trpc.propagation.listBatches.queryOptions({
      page: list.state.page,
      perPage: PER_PAGE,
      text: list.filter('q'),
      state,
      method: oneOf(PROPAGATION_METHODS, list.filter('method')) ?? null,
      sort: oneOf(contracts.BATCH_SORTS, list.state.sort) ?? 'plantBy',
      descending: list.state.descending,
    }),
    placeholderData: keepPreviousData,
  });
  const start = mayBe(FIELD) && (
    <ButtonLink to={paths.startBatch()} look="primary">
      {propagation.start}
    </ButtonLink>
  );
  const isNarrowed = list.filter('q') !== '' || list.filtersSet > 0;
  const empty = isNarrowed ? (
    <EmptyState kind="nothing-matches" title={say.noneTitle}>
      {say.noneText}
    </EmptyState>
  ) : (
    <EmptyState kind="nothing-yet" title={say.emptyTitle} actions={start}>
      {say.emptyText}
    </EmptyState>
  );
  return (
    <div className="stack">
      <PageHeader title={propagation.title} facts={propagation.lead} actions={start} />
      <PropagationTabs />
      <FilterBar
        search={{ label: say.search, value: list.filter('q'), onChange: list.onSearch }}
        set={list.filtersSet}
        onClear={list.clearFilters}
      >
        <SelectField
          name="state"
          label={say.state}
          optional="unsaid"
          empty={say.states.open}
          value={state === 'open' ? '' : state}
          onChange={(value) => list.setFilter('state', value)}
          choices={[
            { value: 'closed', label: say.states.closed },
            { value: 'all', label: say.states.all },
          ]}
        />
        <SelectField
          name="method"
          label={say.method}
          optional="unsaid"
          empty={say.anyMethod}
          value={oneOf(PROPAGATION_METHODS, list.filter('method')) ?? ''}
          onChange={(value) => list.setFilter('method', value)}
          choices={PROPAGATION_METHODS.map((method) => ({ value: method, label: propagation.methods[method] }))}
        />
      </FilterBar>
      <Read query={query} lines={8}>
        {(page) => (
          <>
            <DataTable
              caption={say.caption}
              quietCaption
              rows={page.rows}
              rowId={(row) => row.batchId}
              rowName={(row) => row.code}
              columns={columns}
              sort={list.sort}
              onSort={list.onSort}
              stale={query.isPlaceholderData}
              empty={empty}
            />
            <Pager page={page.page} perPage={page.perPage} total={page.total} onPage={list.onPage} />
          </>
        )}
      </Read>
    </div>
  );
}
