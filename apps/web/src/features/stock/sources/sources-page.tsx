/** All sources: what each is of, where it came from and what stands of it. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { inferRouterOutputs } from '@trpc/server';
import type { AppRouter } from '@rootclock/server/router';
import { sources as contracts } from '@rootclock/contracts';
import { FIELD, SOURCE_KINDS } from '@rootclock/domain';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useListSearch } from '../../../lib/list/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Badge, EmptyState } from '../../../ui/feedback/index.ts';
import { SelectField } from '../../../ui/fields/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { type Column, DataTable, FilterBar, Pager } from '../../../ui/table/index.ts';
import { CodeLink } from '../code-link.tsx';
import { StockTabs } from '../stock-tabs.tsx';
import { SourceForm } from './source-form.tsx';

type Row = inferRouterOutputs<AppRouter>['sources']['listSources']['rows'][number];
const STATES = ['open', 'retired', 'all'] as const;

export function SourcesPage() {
  const { sources } = useMessages();
  const { mayBe } = useSession();
  const list = useListSearch({ sort: 'code', filters: ['q', 'kind', 'state'] });
  const [adding, setAdding] = useState(false);
  const columns = useColumns();
  const query = useQuery({
    ...trpc.sources.listSources.queryOptions({
      text: list.filter('q'),
      kind: SOURCE_KINDS.find((kind) => kind === list.filter('kind')) ?? null,
      state: STATES.find((state) => state === list.filter('state')) ?? 'open',
      page: list.state.page,
      sort: contracts.SOURCE_SORTS.find((sort) => sort === list.state.sort) ?? 'code',
      descending: list.state.descending,
    }),
    placeholderData: keepPreviousData,
  });
  const narrowed = Object.keys(list.state.filters).length > 0;
  const add = mayBe(FIELD) && (
    <Button look="primary" onClick={() => setAdding(true)}>
      {sources.add}
    </Button>
  );
  const filter = (name: string) => ({
    name,
    value: list.filter(name),
    onChange: (value: string) => list.setFilter(name, value),
    optional: 'unsaid' as const,
  });
  return (
    <>
      <StockTabs />
      <PageHeader title={sources.title} actions={add} />
      <FilterBar
        search={{ label: sources.search, value: list.filter('q'), onChange: list.onSearch }}
        set={list.filtersSet}
        onClear={list.clearFilters}
      >
        <SelectField
          {...filter('kind')}
          label={sources.kind}
          empty={sources.anyKind}
          choices={SOURCE_KINDS.map((kind) => ({ value: kind, label: sources.kinds[kind] }))}
        />
        <SelectField
          {...filter('state')}
          label={sources.state}
          empty={sources.states.open}
          choices={[
            { value: 'retired', label: sources.states.retired },
            { value: 'all', label: sources.states.all },
          ]}
        />
      </FilterBar>
      <Read query={query}>
        {({ rows, total, page, perPage }) => (
          <div className="stack">
            <DataTable
              caption={sources.title}
              quietCaption
              rows={rows}
              rowId={(row) => row.sourceId}
              rowName={(row) => row.code}
              columns={columns}
              sort={list.sort}
              onSort={list.onSort}
              stale={query.isPlaceholderData}
              empty={
                <EmptyState
                  kind={narrowed ? 'nothing-matches' : 'nothing-yet'}
                  title={narrowed ? sources.noMatch : sources.none}
                  actions={narrowed ? undefined : add}
                >
                  {narrowed ? sources.noMatchText : sources.noneText}
                </EmptyState>
              }
            />
            <Pager page={page} perPage={perPage} total={total} onPage={list.onPage} />
          </div>
        )}
      </Read>
      {adding && <SourceForm onClose={() => setAdding(false)} />}
    </>
  );
}

function useColumns(): Column<Row>[] {
  const { sources, seed, ui } = useMessages();
  const { dates, numbers, measures } = useFormat();
  return [
    {
      key: 'code',
      header: sources.code,
      sortable: true,
      title: true,
      cell: (row) => (
        <span className="row">
          <CodeLink to={paths.source(row.sourceId)}>{row.code}</CodeLink>
          {row.retired && <Badge shape="open">{sources.retired}</Badge>}
        </span>
      ),
    },
    { key: 'plant', header: sources.plant, sortable: true, cell: (row) => <i>{row.scientificName}</i> },
    { key: 'kind', header: sources.kind, cell: (row) => sources.kinds[row.kind] },
    {
      key: 'provenance',
      header: sources.provenance,
      cell: (row) => [row.provenance, row.seedZone, row.vendor].filter(Boolean).join(', '),
    },
    {
      key: 'gathered',
      header: sources.gathered,
      sortable: true,
      cell: (row) =>
        row.gatheredOn && row.gatheredPrecision
          ? dates.rough(row.gatheredOn, row.gatheredPrecision, (season) => ui[season])
          : '',
    },
    {
      key: 'grams',
      header: seed.gramsLeft,
      sortable: true,
      figure: true,
      cell: (row) => (row.gramsLeft === null ? '' : measures.seedWeight(row.gramsLeft)),
    },
    {
      key: 'test',
      header: seed.lastTest,
      cell: (row) =>
        row.lastTest && (
          <span>
            {numbers.share(row.lastTest.meanShare)} · {dates.short(row.lastTest.testedOn)}
            {row.lastTest.toRepeat && <span className="choice-hint">{seed.toRepeat}</span>}
          </span>
        ),
    },
    {
      key: 'units',
      header: sources.onHand,
      sortable: true,
      figure: true,
      cell: (row) => (
        <span>
          {numbers.count(row.units)}
          {row.openLots + row.openBatches > 0 && (
            <span className="choice-hint">{sources.inUse(row.openLots, row.openBatches)}</span>
          )}
        </span>
      ),
    },
  ];
}
