/** All tasks: what is overdue first, then day by day and place by place, to be ticked off in the field. */
import { addDays, TASK_KINDS } from '@rootclock/domain';
import type { planning } from '@rootclock/contracts';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useListSearch } from '../../../lib/list/index.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Badge, EmptyState } from '../../../ui/feedback/index.ts';
import { SelectField } from '../../../ui/fields/index.ts';
import { PageHeader, Section } from '../../../ui/layout/index.ts';
import { FilterBar, Pager } from '../../../ui/table/index.ts';
import { groupTasks, type TaskGroup } from './groups.ts';
import { TaskItem } from './task-item.tsx';
import { useTicking, type Ticking } from './use-ticking.ts';
import './tasks.css';

const PER_PAGE = 100;
const AHEAD = ['0', '14', '90', '400'] as const;
const USUAL = '14';
const oneOf = <Word extends string>(words: readonly Word[], text: string): Word | undefined =>
  words.find((word) => word === text);

export function TasksPage() {
  const { tasks: say } = useMessages();
  const { today } = useSession();
  const list = useListSearch({ sort: 'day', filters: ['place', 'kind', 'ahead'] });
  const ticking = useTicking();
  const places = useQuery(trpc.stock.listPlaces.queryOptions({}));
  const ahead = oneOf(AHEAD, list.filter('ahead')) ?? USUAL;
  const kind = oneOf(TASK_KINDS, list.filter('kind'));
  const placeId = (places.data ?? []).find((place) => place.placeId === list.filter('place'))?.placeId ?? null;
  const query = useQuery({
    ...trpc.planning.listTasks.queryOptions({
      from: today,
      until: addDays(today, Number(ahead)),
      placeId,
      kinds: kind ? [kind] : [],
      page: list.state.page,
      perPage: PER_PAGE,
    }),
    placeholderData: keepPreviousData,
  });
  const offered = query.data?.kinds ?? [];
  return (
    <div className="stack">
      <PageHeader title={say.title} facts={say.lead} />
      <FilterBar set={list.filtersSet} onClear={list.clearFilters}>
        <SelectField
          name="ahead"
          label={say.ahead}
          optional="unsaid"
          empty={say.aheads[USUAL]}
          value={ahead === USUAL ? '' : ahead}
          onChange={(value) => list.setFilter('ahead', value)}
          choices={AHEAD.filter((each) => each !== USUAL).map((value) => ({ value, label: say.aheads[value] }))}
        />
        <SelectField
          name="place"
          label={say.place}
          optional="unsaid"
          empty={say.anyPlace}
          value={placeId ?? ''}
          onChange={(value) => list.setFilter('place', value)}
          choices={(places.data ?? []).map((place) => ({
            value: place.placeId,
            label: place.name === place.code ? place.code : `${place.code} · ${place.name}`,
          }))}
        />
        <SelectField
          name="kind"
          label={say.kind}
          optional="unsaid"
          empty={say.anyKind}
          value={kind ?? ''}
          onChange={(value) => list.setFilter('kind', value)}
          choices={TASK_KINDS.filter((each) => each === kind || offered.some((known) => known.kind === each)).map(
            (value) => ({ value, label: labelOf(say.kinds[value], offered, value) }),
          )}
        />
      </FilterBar>
      <Read query={query} lines={8}>
        {(page) => (
          <div className="task-list" data-stale={query.isPlaceholderData || undefined}>
            {page.rows.length === 0 ? (
              <Nothing isNarrowed={placeId !== null || kind !== undefined} />
            ) : (
              <Groups groups={groupTasks(page.rows)} ticking={ticking} />
            )}
            <Pager page={page.page} perPage={page.perPage} total={page.total} onPage={list.onPage} />
          </div>
        )}
      </Read>
    </div>
  );
}

const labelOf = (label: string, offered: planning.TaskList['kinds'], kind: string): string => {
  const known = offered.find((each) => each.kind === kind);
  return known ? `${label} (${known.tasks})` : label;
};

function Nothing({ isNarrowed }: { isNarrowed: boolean }) {
  const { tasks: say } = useMessages();
  if (isNarrowed)
    return (
      <EmptyState kind="nothing-matches" title={say.noMatchTitle}>
        {say.noMatchText}
      </EmptyState>
    );
  return (
    <EmptyState kind="all-done" title={say.noneTitle}>
      {say.noneText}
    </EmptyState>
  );
}

/** Where much is overdue, today would be far down: a link leads past it. */
const LONG_OVERDUE = 5;

function Groups({ groups, ticking }: { groups: readonly TaskGroup[]; ticking: Ticking }) {
  const { tasks: say } = useMessages();
  const { dates } = useFormat();
  const [first, second] = groups;
  const next =
    first?.key === 'overdue' && first.tasks > LONG_OVERDUE && second && second.key !== 'done' ? second : null;
  return (
    <>
      {next && (
        <a className="text-link task-past" href={`#${idOf(next)}`}>
          {say.toDay(dates.long(next.key), next.tasks)}
        </a>
      )}
      {groups.map((group) => (
        <div key={group.key} id={idOf(group)}>
          <Group group={group} ticking={ticking} />
        </div>
      ))}
    </>
  );
}

const idOf = ({ key }: TaskGroup): string => `tasks-${key}`;

function Group({ group, ticking }: { group: TaskGroup; ticking: Ticking }) {
  const { tasks: say } = useMessages();
  const { dates } = useFormat();
  const isDay = group.key !== 'overdue' && group.key !== 'done';
  const title = isDay
    ? say.day(dates.long(group.key), dates.fromToday(group.key))
    : group.key === 'done'
      ? say.done
      : say.overdue;
  return (
    <Section
      title={title}
      aside={
        group.key === 'overdue' ? <Badge shape="over">{say.dueCount(group.tasks)}</Badge> : say.dueCount(group.tasks)
      }
    >
      {group.places.map(({ key, place, rows }) => (
        <div key={key} className="task-place">
          <h3>
            {place === null ? say.nowhere : place.name === place.code ? place.code : `${place.code} · ${place.name}`}
          </h3>
          <ul className="tasks">
            {rows.map((task) => (
              <TaskItem key={task.key} task={task} ticking={ticking} />
            ))}
          </ul>
        </div>
      ))}
    </Section>
  );
}
