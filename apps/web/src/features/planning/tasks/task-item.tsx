/**
 * One task. The box at its left is a button for a thumb in a glove; where an entry ends the task there is no box, and the words lead to the entry. What
 * is ticked shows when and by whom, and the way back.
 */
import { FIELD } from '@rootclock/domain';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { Badge } from '../../../ui/feedback/index.ts';
import { TaskSheet } from './task-sheet.tsx';
import { titleOf, wayTo, type TaskRow } from './task-words.ts';
import type { Ticking } from './use-ticking.ts';
import './tasks.css';

export interface TaskItemProps {
  task: TaskRow;
  ticking: Ticking;
  /** Said beside the task where the list is not ordered by places. */
  withPlaces?: boolean;
  /** Said where the list is not ordered by days. */
  withDay?: boolean;
}

export function TaskItem({ task, ticking, withPlaces = false, withDay = false }: TaskItemProps) {
  const { mayBe, today } = useSession();
  const [open, setOpen] = useState(false);
  const title = titleOf(task);
  const isTicked = task.endsBy !== 'entry';
  const busy = ticking.isBusy(task.key);
  return (
    <li className={task.doneOn === null ? 'task' : 'task task-done'}>
      {isTicked && task.doneOn === null && mayBe(FIELD) ? (
        <TickBox title={title} busy={busy} onTick={() => ticking.tick(task, today)} />
      ) : (
        <TaskMark done={task.doneOn !== null} />
      )}
      <div className="task-words">
        <p className="task-title">
          {isTicked ? (
            <button type="button" className="task-open" onClick={() => setOpen(true)}>
              {title}
            </button>
          ) : (
            <Link {...wayTo(task)} className="task-open">
              {title}
            </Link>
          )}
        </p>
        <TaskFacts task={task} withPlaces={withPlaces} withDay={withDay} />
      </div>
      {task.doneOn !== null && mayBe(FIELD) && (
        <Untick title={title} busy={busy} onUntick={() => ticking.untick(task)} />
      )}
      <TaskSheet task={open ? task : null} ticking={ticking} onClose={() => setOpen(false)} />
    </li>
  );
}

function TaskFacts({ task, withPlaces, withDay }: { task: TaskRow; withPlaces: boolean; withDay: boolean }) {
  const { tasks: say } = useMessages();
  const { dates } = useFormat();
  const others = withPlaces ? task.places : task.places.slice(1);
  return (
    <div className="task-facts">
      {task.plantName && <i lang="la">{task.plantName}</i>}
      {others.length > 0 && (
        <span>{say.atPlaces((withPlaces ? others : task.places).map(({ code }) => code).join(', '))}</span>
      )}
      {task.doneOn === null && (withDay || task.isOverdue) && (
        <time dateTime={task.dueOn}>{say.due(dates.short(task.dueOn), dates.fromToday(task.dueOn))}</time>
      )}
      {task.isLate && task.lateOn && (
        <Badge shape="over">{task.lateOn > task.dueOn ? say.lateSince(dates.short(task.lateOn)) : say.late}</Badge>
      )}
      {task.doneOn !== null && <time dateTime={task.doneOn}>{say.doneOn(dates.short(task.doneOn), task.doneBy)}</time>}
    </div>
  );
}

function TickBox({ title, busy, onTick }: { title: string; busy: boolean; onTick: () => void }) {
  const { tasks: say } = useMessages();
  return (
    <button
      type="button"
      className="task-box"
      aria-label={say.tickOf(title)}
      aria-disabled={busy || undefined}
      onClick={() => !busy && onTick()}
    >
      <svg viewBox="0 0 32 32" aria-hidden="true" className={busy ? 'task-check task-check-waiting' : 'task-check'}>
        <path d="M7 17l6 6 12-14" />
      </svg>
    </button>
  );
}

/** Keeps the words of all tasks in one line from above to below, and says what is done without colour. */
function TaskMark({ done }: { done: boolean }) {
  return (
    <span className="task-mark" aria-hidden="true">
      <svg viewBox="0 0 32 32" className="task-check">
        <path d={done ? 'M7 17l6 6 12-14' : 'M12 9l8 7-8 7'} />
      </svg>
    </span>
  );
}

function Untick({ title, busy, onUntick }: { title: string; busy: boolean; onUntick: () => void }) {
  const { tasks: say } = useMessages();
  return (
    <Button look="quiet" busy={busy} aria-label={say.undoOf(title)} onClick={onUntick}>
      {say.undo}
    </Button>
  );
}
