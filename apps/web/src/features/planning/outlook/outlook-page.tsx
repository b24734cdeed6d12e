/** One item week by week: what can go out beside what is wanted, and where it is lacking. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { trpc } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useListSearch } from '../../../lib/list/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Badge, EmptyState } from '../../../ui/feedback/index.ts';
import { SelectField } from '../../../ui/fields/index.ts';
import { PageHeader, Section } from '../../../ui/layout/index.ts';
import { type Column, DataTable } from '../../../ui/table/index.ts';
import { PlanningTabs } from '../planning-tabs.tsx';
import { OutlookChart } from './outlook-chart.tsx';
import type { Outlook } from './outlook-data.ts';
import '../charts.css';

type Item = Outlook['items'][number];
type Week = NonNullable<Outlook['chosen']>['weeks'][number];

const WEEKS = 60;
const keyOf = ({ plantId, containerId }: Pick<Item, 'plantId' | 'containerId'>) => `${plantId}@${containerId}`;

export function OutlookPage() {
  const { outlook: say } = useMessages().planning;
  const list = useListSearch({ sort: 'week', filters: ['item'] });
  const items = useQuery(trpc.planning.readOutlook.queryOptions({}));
  return (
    <div className="stack">
      <PlanningTabs />
      <PageHeader title={say.title} facts={say.lead} />
      <Read query={items} lines={8}>
        {({ items: offered }) => {
          const chosen = offered.find((item) => keyOf(item) === list.filter('item')) ?? offered[0];
          if (!chosen)
            return (
              <EmptyState kind="nothing-yet" title={say.emptyTitle}>
                {say.emptyText}
              </EmptyState>
            );
          return (
            <>
              <SelectField
                name="item"
                label={say.item}
                optional="unsaid"
                empty={say.choose}
                value={keyOf(chosen)}
                onChange={(value) => list.setFilter('item', value)}
                hint={say.wantedUnits(chosen.demandUnits, chosen.supplyUnits)}
                choices={offered.map((item) => ({
                  value: keyOf(item),
                  label: `${item.scientificName} · ${item.containerName}`,
                }))}
              />
              <ItemOutlook item={chosen} />
            </>
          );
        }}
      </Read>
    </div>
  );
}

function ItemOutlook({ item }: { item: Item }) {
  const { plantId, containerId } = item;
  const query = useQuery({
    ...trpc.planning.readOutlook.queryOptions({ item: { plantId, containerId }, weeks: WEEKS }),
    placeholderData: keepPreviousData,
  });
  return (
    <Read query={query} lines={8}>
      {({ chosen }) => chosen && <Weeks item={chosen.item} weeks={chosen.weeks} />}
    </Read>
  );
}

function Weeks({ item, weeks }: { item: NonNullable<Outlook['chosen']>['item']; weeks: readonly Week[] }) {
  const { outlook: say } = useMessages().planning;
  const { dates } = useFormat();
  const short = weeks.reduce((sum, week) => sum + week.shortCautious, 0);
  const first = weeks.find(({ shortCautious }) => shortCautious > 0);
  return (
    <Section title={`${item.scientificName} · ${item.containerName}`}>
      <p>
        {first ? (
          <>
            <Badge shape="over">{say.lacking}</Badge> {say.lacks(short, dates.short(first.startsOn))}
          </>
        ) : (
          <>
            <Badge shape="full">{say.met}</Badge> {say.enough}
          </>
        )}
      </p>
      <OutlookChart weeks={weeks} label={say.chart(item.scientificName)} />
      <p>{say.legendNote}</p>
      <WeeksTable weeks={weeks} />
    </Section>
  );
}

/** A week that is like the one before and in which nothing is wanted says nothing new. */
const changes = (weeks: readonly Week[]): Week[] =>
  weeks.filter(
    (week, at) =>
      at === 0 ||
      week.orders + week.expected > 0 ||
      week.cautious !== weeks[at - 1]?.cautious ||
      week.usual !== weeks[at - 1]?.usual,
  );

function useWeekColumns(): Column<Week>[] {
  const { outlook: say } = useMessages().planning;
  const { dates, numbers } = useFormat();
  const figure = (units: number) => (units === 0 ? say.none : numbers.count(units));
  return [
    { key: 'week', header: say.week, title: true, cell: ({ startsOn }) => dates.short(startsOn) },
    { key: 'cautious', header: say.cautious, figure: true, cell: ({ cautious }) => numbers.count(cautious) },
    { key: 'usual', header: say.usual, figure: true, cell: ({ usual }) => numbers.count(usual) },
    { key: 'orders', header: say.orders, figure: true, cell: ({ orders }) => figure(orders) },
    { key: 'expected', header: say.expected, figure: true, cell: ({ expected }) => figure(expected) },
    {
      key: 'short',
      header: say.short,
      figure: true,
      cell: ({ shortCautious, shortUsual }) =>
        shortCautious === 0 ? say.none : <Badge shape="over">{say.shortOf(shortCautious, shortUsual)}</Badge>,
    },
  ];
}

function WeeksTable({ weeks }: { weeks: readonly Week[] }) {
  const { outlook: say } = useMessages().planning;
  const { dates } = useFormat();
  const columns = useWeekColumns();
  return (
    <DataTable
      caption={say.onlyWeeks}
      rows={changes(weeks)}
      rowId={({ startsOn }) => startsOn}
      rowName={({ startsOn }) => dates.short(startsOn)}
      columns={columns}
      empty={null}
    />
  );
}
