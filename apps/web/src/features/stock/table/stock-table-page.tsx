/** The stock table: every lot by any of its facts, what must leave its pot first coming first. */
import { useQuery } from '@tanstack/react-query';
import { GROWERS, HOLD_REASONS, POT_BANDS } from '@rootclock/domain';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useListSearch } from '../../../lib/list/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { CheckboxField, SelectField } from '../../../ui/fields/index.ts';
import { PageHeader } from '../../../ui/layout/index.ts';
import { FilterBar } from '../../../ui/table/index.ts';
import { StockTabs } from '../stock-tabs.tsx';
import { LIST_DEFAULTS, type LotFilter, LotsTable } from './lots-table.tsx';

type Narrowing = ReturnType<typeof useListSearch>;
const STATES = ['open', 'closed', 'all'] as const;
const BANDS = [...POT_BANDS, 'no-window'] as const;
const HELD = ['any', 'none', ...HOLD_REASONS] as const;

/** What stands in the address, as the server asks for it; words that mean nothing there are left out. */
function filterOf(list: Narrowing): LotFilter {
  const among = <Value extends string>(values: readonly Value[], name: string): Value | undefined =>
    values.find((value) => value === list.filter(name));
  return {
    text: list.filter('q'),
    placeId: list.filter('place') || null,
    containerId: list.filter('container') || null,
    state: among(STATES, 'state') ?? 'open',
    held: among(HELD, 'held') ?? null,
    band: among(BANDS, 'band') ?? null,
    free: list.filter('free') === 'yes',
  };
}

export function StockTablePage() {
  const { table } = useMessages().stockIn;
  const { mayBe } = useSession();
  const list = useListSearch(LIST_DEFAULTS);
  const narrowed = Object.keys(list.state.filters).length > 0;
  const takeIn = mayBe(GROWERS) && <ButtonLink to={paths.opening()}>{table.takeIn}</ButtonLink>;
  return (
    <>
      <StockTabs />
      <PageHeader title={table.title} actions={takeIn} />
      <LotFilters list={list} />
      <LotsTable
        list={list}
        filter={filterOf(list)}
        caption={table.caption}
        empty={
          narrowed ? (
            <EmptyState kind="nothing-matches" title={table.noMatch}>
              {table.noMatchText}
            </EmptyState>
          ) : (
            <EmptyState kind="nothing-yet" title={table.none} actions={takeIn}>
              {table.noneText}
            </EmptyState>
          )
        }
      />
    </>
  );
}

function LotFilters({ list }: { list: Narrowing }) {
  const { table, bands, holds } = useMessages().stockIn;
  const places = useQuery(trpc.stock.listPlaces.queryOptions({}));
  const containers = useQuery(trpc.plants.listContainers.queryOptions({}));
  const filter = (name: string) => ({
    name,
    value: list.filter(name),
    onChange: (value: string) => list.setFilter(name, value),
    optional: 'unsaid' as const,
  });
  return (
    <FilterBar
      search={{ label: table.search, value: list.filter('q'), onChange: list.onSearch }}
      set={list.filtersSet}
      onClear={list.clearFilters}
    >
      <SelectField
        {...filter('band')}
        label={table.band}
        empty={table.anyBand}
        choices={BANDS.map((band) => ({ value: band, label: band === 'no-window' ? table.noWindow : bands[band] }))}
      />
      <SelectField
        {...filter('place')}
        label={table.places}
        empty={table.anyPlace}
        choices={(places.data ?? []).map((place) => ({
          value: place.placeId,
          label: `${'\u2003'.repeat(place.depth)}${place.code}`,
        }))}
      />
      <SelectField
        {...filter('container')}
        label={table.container}
        empty={table.anyContainer}
        choices={(containers.data ?? []).map((container) => ({ value: container.id, label: container.name }))}
      />
      <SelectField
        {...filter('held')}
        label={table.held}
        empty={table.bothHeld}
        choices={HELD.map((held) => ({
          value: held,
          label: held === 'any' ? table.heldAny : held === 'none' ? table.heldNone : holds[held],
        }))}
      />
      <SelectField
        {...filter('state')}
        label={table.state}
        empty={table.states.open}
        choices={[
          { value: 'closed', label: table.states.closed },
          { value: 'all', label: table.states.all },
        ]}
      />
      <CheckboxField
        name="free"
        label={table.onlyFree}
        value={list.filter('free') === 'yes'}
        onChange={(only) => list.setFilter('free', only ? 'yes' : '')}
      />
    </FilterBar>
  );
}
