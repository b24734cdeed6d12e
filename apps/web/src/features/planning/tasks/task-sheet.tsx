/** What is known of a task that is ticked: where, since when, what to mind, and ticking it for another day than today. */
import { FIELD } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../lib/api/index.ts';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, ButtonLink } from '../../../ui/action/index.ts';
import { Callout } from '../../../ui/feedback/index.ts';
import { DateField } from '../../../ui/fields/index.ts';
import { Sheet } from '../../../ui/overlay/index.ts';
import { titleOf, wayTo, type TaskRow } from './task-words.ts';
import type { Ticking } from './use-ticking.ts';

export interface TaskSheetProps {
  /** Null while it is closed. */
  task: TaskRow | null;
  ticking: Ticking;
  onClose: () => void;
}

export function TaskSheet({ task, ticking, onClose }: TaskSheetProps) {
  return (
    <Sheet open={task !== null} onClose={onClose} title={task ? titleOf(task) : ''}>
      {task && <Content task={task} ticking={ticking} onClose={onClose} />}
    </Sheet>
  );
}

function Content({ task, ticking, onClose }: TaskSheetProps & { task: TaskRow }) {
  const { tasks: say } = useMessages();
  const { mayBe, today } = useSession();
  const { dates } = useFormat();
  const [chosenOn, setChosenOn] = useState<string | null>(null);
  const doneOn = chosenOn ?? today;
  const { details } = task;
  return (
    <div className="stack">
      {task.kind === 'vole-bait' && <Callout tone="caution">{say.voleBait}</Callout>}
      <div>
        {task.plantName && (
          <p>
            <i lang="la">{task.plantName}</i>
          </p>
        )}
        {task.places.length > 0 && (
          <p>
            {say.atPlaces(task.places.map(({ code, name }) => (name === code ? code : `${code} (${name})`)).join(', '))}
          </p>
        )}
        <p>
          <time dateTime={task.dueOn}>{say.due(dates.long(task.dueOn), dates.fromToday(task.dueOn))}</time>
        </p>
        {task.lateOn && task.lateOn > task.dueOn && <p>{say.lateAfter(dates.long(task.lateOn))}</p>}
        {details.sinceOn && <p>{sinceWords(task, say.since)(dates.long(details.sinceOn))}</p>}
        {details.stage && task.kind !== 'stage-late' && <p>{say.stageNow(details.stage)}</p>}
        {details.next && <p>{say.stageNext(details.next)}</p>}
        {details.dormant && <p>{say.dormant(details.dormant.join(', '))}</p>}
      </div>
      {task.doneOn === null && mayBe(FIELD) && (
        <>
          <DateField
            name="doneOn"
            label={say.tickedOn}
            min={task.earliestOn}
            max={today}
            value={doneOn}
            onChange={setChosenOn}
          />
          <Button
            look="primary"
            wide
            busy={ticking.isBusy(task.key)}
            onClick={() => {
              ticking.tick(task, doneOn || today);
              onClose();
            }}
          >
            {say.tick}
          </Button>
        </>
      )}
      <ButtonLink {...wayTo(task)} wide>
        {say.go[task.subject.kind]}
      </ButtonLink>
    </div>
  );
}

function sinceWords(
  { kind, subject }: TaskRow,
  since: ReturnType<typeof useMessages>['tasks']['since'],
): (day: string) => string {
  if (kind === 'stage-late') return since.long;
  if (kind === 'count') return since.count;
  if (kind === 'ask-not-yet-up') return since.counted;
  return subject.kind === 'order' ? since.planted : subject.kind === 'source' ? since.tested : since.potted;
}
