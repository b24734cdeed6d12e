/**
 * What is to be done today and what is overdue, for the day's page: first what asks to be looked at, then the rest. What is to be pulled and what must leave
 * its pot have lists of their own there.
 */
import { TASK_KINDS, type TaskKind } from '@rootclock/domain';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { trpc, useSession } from '../../../lib/api/index.ts';
import { paths } from '../../../lib/paths.ts';
import { Read } from '../../../lib/read/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { ButtonLink } from '../../../ui/action/index.ts';
import { EmptyState } from '../../../ui/feedback/index.ts';
import { Section } from '../../../ui/layout/index.ts';
import { TaskItem } from './task-item.tsx';
import { useTicking } from './use-ticking.ts';
import './tasks.css';

const RAISED: readonly TaskKind[] = ['stage-late', 'ask-not-yet-up', 'test-to-repeat'];
const ELSEWHERE: readonly TaskKind[] = ['pull', 'leave-the-pot'];
const TO_DO = TASK_KINDS.filter((kind) => !RAISED.includes(kind) && !ELSEWHERE.includes(kind));
const SHOWN = 8;

export function TodayTasks() {
  const { tasks: say } = useMessages();
  return (
    <>
      <TaskSection title={say.raised} kinds={RAISED} hideEmpty />
      <TaskSection title={say.today} kinds={TO_DO} />
    </>
  );
}

function TaskSection({
  title,
  kinds,
  hideEmpty = false,
}: {
  title: string;
  kinds: readonly TaskKind[];
  hideEmpty?: boolean;
}) {
  const { tasks: say, today: words } = useMessages();
  const { today } = useSession();
  const ticking = useTicking();
  const query = useQuery({
    ...trpc.planning.listTasks.queryOptions({ from: today, until: today, kinds: [...kinds], perPage: SHOWN }),
    placeholderData: keepPreviousData,
  });
  return (
    <Read query={query}>
      {({ rows, total, overdue }) =>
        rows.length === 0 && hideEmpty ? null : (
          <Section
            title={title}
            aside={overdue > 0 ? say.overdueCount(overdue) : total}
            actions={!hideEmpty && <ButtonLink to={paths.tasks()}>{say.all}</ButtonLink>}
          >
            {rows.length === 0 ? (
              <EmptyState kind="all-done" title={say.todayNone} />
            ) : (
              <ul className="tasks">
                {rows.map((task) => (
                  <TaskItem key={task.key} task={task} ticking={ticking} withPlaces withDay />
                ))}
              </ul>
            )}
            {total > rows.length && <p>{words.more(total - rows.length)}</p>}
          </Section>
        )
      }
    </Read>
  );
}
