/** The plants of the nursery: found by any name or code, filtered by roots and caterpillars, each with what stands of it. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { plants as contracts } from '@rootclock/contracts';
import { GROWERS, ROOT_HABITS } from '@rootclock/domain';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useListSearch } from '../../../lib/list/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { SelectField } from '../../../ui/fields/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { FilterBar, Pager } from '../../../ui/table/index.ts';
import { PlantsTabs } from '../plants-tabs.tsx';
import { LoadReference } from './load-reference.tsx';
import { PlantsTable } from './plants-table.tsx';

const PER_PAGE = 50;
const asHabit = (text: string) => ROOT_HABITS.find((habit) => habit === text) ?? null;

export function PlantsPage() {
  const { plants } = useMessages();
  const { list: say, rootHabits } = plants;
  const { mayBe } = useSession();
  const list = useListSearch({ sort: 'name', filters: ['q', 'roots', 'host', 'retired'] });
  const host = list.filter('host');
  const query = useQuery({
    ...trpc.plants.listPlants.queryOptions({
      text: list.filter('q') || null,
      rootHabit: asHabit(list.filter('roots')),
      larvalHost: host === '' ? null : host === 'yes',
      retired: list.filter('retired') === 'yes',
      sort: list.state.sort === 'units' ? 'units' : 'name',
      descending: list.state.descending,
      page: list.state.page,
      perPage: PER_PAGE,
    }),
    placeholderData: keepPreviousData,
  });
  const isFiltered = Object.keys(list.state.filters).length > 0;
  const empty = isFiltered ? (
    <EmptyState kind="nothing-matches" title={say.noMatchTitle}>
      {say.noMatchText}
    </EmptyState>
  ) : (
    <EmptyState kind="nothing-yet" title={say.emptyTitle} actions={<LoadReference />}>
      {say.emptyText}
    </EmptyState>
  );
  return (
    <>
      <PageHeader
        title={say.title}
        actions={
          mayBe(GROWERS) && (
            <ButtonLink look="primary" to={paths.addPlant()}>
              {say.add}
            </ButtonLink>
          )
        }
      />
      <PlantsTabs />
      <FilterBar
        search={{ label: say.search, value: list.filter('q'), onChange: list.onSearch }}
        set={list.filtersSet}
        onClear={list.clearFilters}
      >
        <SelectField
          name="roots"
          label={say.rootHabit}
          optional="unsaid"
          empty={say.anyRoots}
          value={asHabit(list.filter('roots')) ?? ''}
          onChange={(value) => list.setFilter('roots', value)}
          choices={ROOT_HABITS.map((value) => ({ value, label: rootHabits[value] }))}
        />
        <SelectField
          name="host"
          label={say.host}
          optional="unsaid"
          empty={say.anyHost}
          value={host === 'yes' || host === 'no' ? host : ''}
          onChange={(value) => list.setFilter('host', value)}
          choices={[
            { value: 'yes', label: say.hostYes },
            { value: 'no', label: say.hostNo },
          ]}
        />
        <SelectField
          name="retired"
          label={say.shown}
          optional="unsaid"
          empty={say.grown}
          value={list.filter('retired') === 'yes' ? 'yes' : ''}
          onChange={(value) => list.setFilter('retired', value)}
          choices={[{ value: 'yes', label: say.retired }]}
        />
      </FilterBar>
      <Read query={query}>
        {({
          rows,
          total,
          page,
          perPage,
        }: {
          rows: contracts.PlantRow[];
          total: number;
          page: number;
          perPage: number;
        }) => (
          <>
            <PlantsTable
              rows={rows}
              caption={say.lead(total)}
              sort={list.sort}
              onSort={list.onSort}
              stale={query.isPlaceholderData}
              empty={empty}
            />
            <Pager page={page} perPage={perPage} total={total} onPage={list.onPage} />
          </>
        )}
      </Read>
    </>
  );
}
