/** Plants and how each is propagated; those without a protocol are listed too, so that it is seen what has none. */
import { propagation as contracts } from '@rootclock/contracts';
import { GROWERS, PROPAGATION_METHODS } from '@rootclock/domain';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { trpc, useSession } from '../../../../lib/api/index.ts';
import { useListSearch } from '../../../../lib/list/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { ButtonLink } from '../../../../ui/action/index.ts';
import { EmptyState } from '../../../../ui/feedback/index.ts';
import { SelectField } from '../../../../ui/fields/index.ts';
import { PageHeader } from '../../../../ui/layout/index.ts';
import { FilterBar, Pager } from '../../../../ui/table/index.ts';
import { PropagationTabs } from '../../propagation-tabs.tsx';
import { LoadReferenceProtocols } from './load-reference-protocols.tsx';
import { PlantCard } from './plant-card.tsx';
import '../protocols.css';

const PER_PAGE = 40;

export function ProtocolsPage() {
  const { propagation } = useMessages();
  const { list: say, title, lead } = propagation.protocols;
  const { mayBe } = useSession();
  const list = useListSearch({ sort: 'plant', filters: ['q', 'method', 'have', 'retired'] });
  const method = PROPAGATION_METHODS.find((each) => each === list.filter('method')) ?? null;
  const have = contracts.PROTOCOL_HAVE.find((each) => each === list.filter('have')) ?? 'all';
  const retired = list.filter('retired') === 'yes';
  const query = useQuery({
    ...trpc.propagation.listProtocols.queryOptions({
      text: list.filter('q') || null,
      method,
      have,
      retired,
      page: list.state.page,
      perPage: PER_PAGE,
    }),
    placeholderData: keepPreviousData,
  });
  const empty =
    have === 'without' && list.filter('q') === '' ? (
      <EmptyState kind="all-done" title={say.doneTitle}>
        {say.doneText}
      </EmptyState>
    ) : list.filter('q') !== '' || list.filtersSet > 0 ? (
      <EmptyState kind="nothing-matches" title={say.noMatchTitle}>
        {say.noMatchText}
      </EmptyState>
    ) : (
      <EmptyState
        kind="nothing-yet"
        title={say.emptyTitle}
        actions={
          <ButtonLink to={paths.plants()} look="primary">
            {say.toPlants}
          </ButtonLink>
        }
      >
        {say.emptyText}
      </EmptyState>
    );
  return (
    <div className="stack">
      <PageHeader
        title={title}
        facts={lead}
        actions={
          mayBe(GROWERS) && (
            <ButtonLink to={paths.newProtocol()} look="primary">
              {say.add}
            </ButtonLink>
          )
        }
      />
      <PropagationTabs />
      <FilterBar
        search={{ label: say.search, value: list.filter('q'), onChange: list.onSearch }}
        set={list.filtersSet}
        onClear={list.clearFilters}
      >
        <SelectField
          name="method"
          label={say.method}
          optional="unsaid"
          empty={say.anyMethod}
          value={method ?? ''}
          onChange={(value) => list.setFilter('method', value)}
          choices={PROPAGATION_METHODS.map((value) => ({ value, label: propagation.methods[value] }))}
        />
        <SelectField
          name="have"
          label={say.have}
          optional="unsaid"
          empty={say.haves.all}
          value={have === 'all' ? '' : have}
          onChange={(value) => list.setFilter('have', value)}
          choices={(['with', 'without'] as const).map((value) => ({ value, label: say.haves[value] }))}
        />
        <SelectField
          name="retired"
          label={say.retired}
          optional="unsaid"
          empty={say.inUse}
          value={retired ? 'yes' : ''}
          onChange={(value) => list.setFilter('retired', value)}
          choices={[{ value: 'yes', label: say.onlyRetired }]}
        />
      </FilterBar>
      <Read query={query} lines={8}>
        {({ rows, total, page, perPage, missingReference }) => (
          <>
            <LoadReferenceProtocols missing={missingReference} />
            {rows.length === 0 ? (
              empty
            ) : (
              <>
                <p className="protocols-count">{say.count(total)}</p>
                <ul className="protocol-plants" data-stale={query.isPlaceholderData || undefined}>
                  {rows.map((plant) => (
                    <li key={plant.plantId}>
                      <PlantCard plant={plant} mayWrite={mayBe(GROWERS) && !retired} />
                    </li>
                  ))}
                </ul>
              </>
            )}
            <Pager page={page} perPage={perPage} total={total} onPage={list.onPage} />
          </>
        )}
      </Read>
    </div>
  );
}
