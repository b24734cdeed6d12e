/** What the nursery expects to need beyond its orders: a form for many in a row, and all of it by season. */
import { planning as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useListSearch } from '../../../lib/list/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, TextLink } from '../../../ui/action/index.ts';
import { Badge, EmptyState } from '../../../ui/feedback/index.ts';
import { SelectField } from '../../../ui/fields/index.ts';
import { PageHeader, Panel, Section } from '../../../ui/layout/index.ts';
import { type Column, DataTable, FilterBar, Pager } from '../../../ui/table/index.ts';
import { PlanningTabs } from '../planning-tabs.tsx';
import { AddDemandForm } from './add-demand-form.tsx';
import { EditDemandSheet } from './edit-demand-sheet.tsx';

const PER_PAGE = 50;
type Row = contracts.ExpectedDemandRow;

export function DemandPage() {
  const { planning } = useMessages();
  const { demand: say } = planning;
  const { mayBe } = useSession();
  const list = useListSearch({ sort: 'wanted', filters: ['state'] });
  const [changed, setChanged] = useState<Row | null>(null);
  const state = contracts.DEMAND_STATES.find((each) => each === list.filter('state')) ?? 'ahead';
  const query = useQuery({
    ...trpc.planning.listExpectedDemand.queryOptions({ state, page: list.state.page, perPage: PER_PAGE }),
    placeholderData: keepPreviousData,
  });
  const columns = useColumns(mayBe(GROWERS) ? setChanged : null);
  return (
    <div className="stack">
      <PlanningTabs />
      <PageHeader title={say.title} facts={say.lead} />
      {mayBe(GROWERS) && (
        <Section title={say.addTitle}>
          <Panel>
            <div className="demand-row">
              <AddDemandForm />
            </div>
          </Panel>
        </Section>
      )}
      <Section title={say.caption}>
        <FilterBar set={list.filtersSet} onClear={list.clearFilters}>
          <SelectField
            name="state"
            label={say.state}
            optional="unsaid"
            empty={say.states.ahead}
            value={state === 'ahead' ? '' : state}
            onChange={(value) => list.setFilter('state', value)}
            choices={[
              { value: 'past', label: say.states.past },
              { value: 'all', label: say.states.all },
            ]}
          />
        </FilterBar>
        <Read query={query} lines={6}>
          {(page) => (
            <>
              <DataTable
                caption={say.caption}
                quietCaption
                rows={page.rows}
                rowId={(row) => row.demandId}
                rowName={(row) => row.scientificName}
                columns={columns}
                stale={query.isPlaceholderData}
                empty={
                  list.filtersSet > 0 ? (
                    <EmptyState kind="nothing-matches" title={say.noneTitle}>
                      {say.noneText}
                    </EmptyState>
                  ) : (
                    <EmptyState kind="nothing-yet" title={say.emptyTitle}>
                      {say.emptyText}
                    </EmptyState>
                  )
                }
              />
              <Pager page={page.page} perPage={page.perPage} total={page.total} onPage={list.onPage} />
              {page.rows.length > 0 && (
                <p>
                  {say.total(
                    page.rows.reduce((sum, { units }) => sum + units, 0),
                    page.rows.length,
                  )}
                </p>
              )}
            </>
          )}
        </Read>
      </Section>
      {changed && <EditDemandSheet row={changed} onClose={() => setChanged(null)} />}
    </div>
  );
}

function useColumns(onChange: ((row: Row) => void) | null): Column<Row>[] {
  const { demand: say } = useMessages().planning;
  const { nursery } = useSession();
  const { dates, numbers } = useFormat();
  return [
    {
      key: 'plant',
      header: say.plant,
      title: true,
      cell: (row) => (
        <>
          <TextLink to={paths.plant(row.plantId)}>
            <i lang="la">{row.scientificName}</i>
          </TextLink>{' '}
          {row.vernacularName}
        </>
      ),
    },
    { key: 'container', header: say.container, cell: (row) => row.containerName },
    {
      key: 'wanted',
      header: say.wanted,
      cell: (row) => (
        <>
          {say.wantedFrom(dates.short(row.wantedOn))} {row.isPast && <Badge shape="over">{say.past}</Badge>}
        </>
      ),
    },
    { key: 'units', header: say.units, figure: true, cell: (row) => numbers.count(row.units) },
    {
      key: 'value',
      header: say.value,
      figure: true,
      cell: (row) => (row.unitValueMinor === null ? say.noValue : numbers.money(row.unitValueMinor, nursery.currency)),
    },
    { key: 'note', header: say.note, cell: (row) => row.note },
    ...(onChange === null
      ? []
      : [
          {
            key: 'change',
            header: say.change,
            cell: (row: Row) => (
              <Button look="quiet" aria-label={say.changeOf(row.scientificName)} onClick={() => onChange(row)}>
                {say.change}
              </Button>
            ),
          },
        ]),
  ];
}
