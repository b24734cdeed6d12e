/** The filters of the list of orders; their values live in the page's address. */
import { ORDER_KINDS, ORDER_STATES } from '@rootclock/domain';
import type { useListSearch } from '../../../lib/list/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { CheckboxField, DateField, SelectField } from '../../../ui/fields/index.ts';
import { FilterBar } from '../../../ui/table/index.ts';

export function OrderFilters({ list }: { list: ReturnType<typeof useListSearch> }) {
  const { orders } = useMessages();
  const words = orders.list;
  const states = [
    ...ORDER_STATES.filter((state) => state !== 'open').map((state) => ({
      value: state as string,
      label: orders.states[state],
    })),
    { value: 'any', label: words.anyState },
  ];
  return (
    <FilterBar
      search={{ label: words.searchLabel, value: list.filter('q'), onChange: list.onSearch }}
      set={list.filtersSet}
      onClear={list.clearFilters}
    >
      <SelectField
        name="state"
        label={words.stateFilter}
        optional="unsaid"
        empty={orders.states.open}
        value={list.filter('state')}
        onChange={(value) => list.setFilter('state', value)}
        choices={states}
      />
      <SelectField
        name="kind"
        label={words.kindFilter}
        optional="unsaid"
        empty={words.anyKind}
        value={list.filter('kind')}
        onChange={(value) => list.setFilter('kind', value)}
        choices={ORDER_KINDS.map((kind) => ({ value: kind as string, label: orders.kinds[kind] }))}
      />
      <DateField
        name="from"
        label={words.from}
        optional="unsaid"
        value={list.filter('from')}
        onChange={(value) => list.setFilter('from', value)}
      />
      <DateField
        name="to"
        label={words.to}
        optional="unsaid"
        value={list.filter('to')}
        onChange={(value) => list.setFilter('to', value)}
      />
      <CheckboxField
        name="short"
        label={words.shortFilter}
        value={list.filter('short') === 'yes'}
        onChange={(value) => list.setFilter('short', value ? 'yes' : '')}
      />
    </FilterBar>
  );
}
