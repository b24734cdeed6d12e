/** The record of all plants: what came through each stage, what that rests on, and how counts are weighed against protocols. */
import { OWNER } from '@rootclock/domain';
import { useQuery } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { trpc, useSession } from '../../../../lib/api/index.ts';
import { useFormat } from '../../../../lib/format/index.ts';
import { useListSearch } from '../../../../lib/list/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button, ButtonLink, RowLink } from '../../../../ui/action/index.ts';
import { EmptyState } from '../../../../ui/feedback/index.ts';
import { SelectField } from '../../../../ui/fields/index.ts';
import { PageHeader } from '../../../../ui/layout/index.ts';
import { type Column, DataTable, FilterBar, Pager } from '../../../../ui/table/index.ts';
import { PropagationTabs } from '../../propagation-tabs.tsx';
import type { NurseryRecord } from '../record-data.ts';
import { WeighSheet } from '../weigh-sheet.tsx';
import { matches, RECORD_SORTS, type RecordRow, rowsOf, sorted } from './rows.ts';
import { ShareCell } from './share-cell.tsx';
import '../record.css';

const PER_PAGE = 20;

export function RecordPage() {
  const { record: say } = useMessages();
  const query = useQuery(trpc.propagation.readRecord.queryOptions({}));
  return (
    <div className="stack">
      <PageHeader title={say.title} facts={say.lead} />
      <PropagationTabs />
      <Read query={query} lines={8}>
        {(record) => <Shares record={record} />}
      </Read>
    </div>
  );
}

function Shares({ record }: { record: NurseryRecord }) {
  const { record: say } = useMessages();
  const { numbers } = useFormat();
  const { mayBe } = useSession();
  const [weighing, setWeighing] = useState(false);
  const list = useListSearch({ sort: 'plant', filters: ['q', 'show'] });
  const columns = useColumns();
  const { settings } = record;
  const all = useMemo(() => rowsOf(record, record.settings), [record]);
  const sort = RECORD_SORTS.find((each) => each === list.state.sort) ?? 'plant';
  // Where something was counted that is what a grower comes for; figures of protocols stand on the protocols' own pages too.
  const anyCounted = all.some((row) => row.tried > 0);
  const withProtocols = !anyCounted || list.filter('show') === 'all';
  const found = sorted(
    all.filter((row) => matches(row, list.filter('q')) && (withProtocols || row.tried > 0)),
    sort,
    list.state.descending,
  );
  const page = Math.min(list.state.page, Math.max(1, Math.ceil(found.length / PER_PAGE)));
  const empty =
    all.length === 0 ? (
      <EmptyState
        kind="nothing-yet"
        title={say.emptyTitle}
        actions={
          <ButtonLink to={paths.protocols()} look="primary">
            {say.toProtocol}
          </ButtonLink>
        }
      >
        {say.emptyText}
      </EmptyState>
    ) : (
      <EmptyState kind="nothing-matches" title={say.noneTitle}>
        {say.noneText}
      </EmptyState>
    );
  return (
    <>
      <div className="row">
        <p className="record-note">
          {say.weights(
            numbers.count(settings.priorWeight),
            numbers.count(settings.evidenceLimit),
            numbers.share(settings.planConfidence),
          )}
        </p>
        {mayBe(OWNER) ? (
          <Button onClick={() => setWeighing(true)}>{say.weigh}</Button>
        ) : (
          <p className="record-note">{say.ownerOnly}</p>
        )}
      </div>
      <FilterBar
        search={{ label: say.search, value: list.filter('q'), onChange: list.onSearch }}
        set={list.filtersSet}
        onClear={list.clearFilters}
      >
        <SelectField
          name="show"
          label={say.show}
          optional="unsaid"
          empty={say.showCounted}
          value={withProtocols && anyCounted ? 'all' : ''}
          onChange={(value) => list.setFilter('show', value)}
          choices={[{ value: 'all', label: say.showAll }]}
        />
      </FilterBar>
      <p className="record-note">{say.legend}</p>
      <DataTable
        caption={say.caption}
        quietCaption
        rows={found.slice((page - 1) * PER_PAGE, page * PER_PAGE)}
        rowId={(row) => row.id}
        rowName={(row) => row.plant.scientificName}
        columns={columns}
        sort={list.sort}
        onSort={list.onSort}
        empty={empty}
      />
      <Pager page={page} perPage={PER_PAGE} total={found.length} onPage={list.onPage} />
      {weighing && <WeighSheet record={record} onClose={() => setWeighing(false)} />}
    </>
  );
}

function useColumns(): Column<RecordRow>[] {
  const { record: say, propagation } = useMessages();
  const { numbers } = useFormat();
  return [
    {
      key: 'plant',
      header: say.plant,
      title: true,
      sortable: true,
      cell: (row) => (
        <span className="record-plant">
          <RowLink to={paths.plantRecord(row.plant.plantId)}>
            <i lang="la">{row.plant.scientificName}</i>
          </RowLink>
          <span className="share-words">
            {say.sharesOf(propagation.methods[row.method], row.label)}
            {!row.hasProtocol && `, ${say.noProtocol}`}
          </span>
        </span>
      ),
    },
    {
      key: 'cameUp',
      header: say.cameUp,
      sortable: true,
      cell: (row) => <ShareCell stage={row.cameUp} hasProtocol={row.hasProtocol} />,
    },
    {
      key: 'prickedOut',
      header: say.prickedOut,
      sortable: true,
      cell: (row) => <ShareCell stage={row.prickedOut} hasProtocol={row.hasProtocol} />,
    },
    {
      key: 'grownOn',
      header: say.grownOn,
      sortable: true,
      cell: (row) => <ShareCell stage={row.grownOn} hasProtocol={row.hasProtocol} />,
    },
    {
      key: 'inAll',
      header: say.inAll,
      sortable: true,
      cell: (row) =>
        row.inAll && (
          <span className="share-cell">
            <span className="share-figure">{numbers.share(row.inAll.share)}</span>
            <span className="share-words">
              {say.inAllHint(numbers.share(row.inAll.low), numbers.share(row.inAll.high))}
            </span>
          </span>
        ),
    },
  ];
}
