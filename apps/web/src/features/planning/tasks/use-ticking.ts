/**
 * Ticking tasks off. It goes through the outbox itself and not through a row, since the row leaves the list as soon as the answer is there, and several
 * may be on their way at once. A task that a stage ends makes the entry that begins the stage; every tick can be taken back.
 */
import { useCallback, useState } from 'react';
import { queryClient, type CommandAnswer, type CommandBody, type CommandName } from '../../../lib/api/index.ts';
import { newCommandId } from '../../../lib/ids.ts';
import { outbox } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { messages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { titleOf, type TaskRow } from './task-words.ts';

export interface Ticking {
  isBusy(key: string): boolean;
  tick(task: TaskRow, doneOn: string): void;
  untick(task: TaskRow): void;
}

async function send<Name extends CommandName>(
  name: Name,
  title: string,
  body: CommandBody<Name>,
): Promise<CommandAnswer<Name>> {
  const from = window.location.pathname + window.location.search;
  const answer = (await outbox.enter({
    id: newCommandId(),
    name,
    title,
    body,
    creates: [],
    from,
  })) as CommandAnswer<Name>;
  // Its row stays busy until the list is read again: a box that looks empty after it was ticked would be pressed twice.
  await queryClient.invalidateQueries({ queryKey: [['planning']] });
  return answer;
}

async function openAgain(task: TaskRow): Promise<void> {
  const title = titleOf(task);
  await send('planning.untickTask', messages().tasks.undoOf(title), { key: task.key });
  toast({ text: messages().tasks.unticked(title) });
}

async function markDone(task: TaskRow, doneOn: string): Promise<void> {
  const { tasks } = messages();
  const title = titleOf(task);
  if (task.endsBy === 'stage') {
    const { entryId } = await send('propagation.beginBatchStage', tasks.tickOf(title), {
      batchId: task.subject.id,
      position: task.details.nextPosition ?? 0,
      happenedOn: doneOn,
    });
    const takeBack = async () => {
      await send('stock.reverseEntry', tasks.undoOf(title), { entryId });
      toast({ text: messages().tasks.unticked(title) });
    };
    toast({ text: tasks.ticked(title), undo: () => void takeBack().catch(tellRefused) });
  } else {
    await send('planning.tickTask', tasks.tickOf(title), { key: task.key, doneOn });
    toast({ text: tasks.ticked(title), undo: () => void openAgain(task).catch(tellRefused) });
  }
}

export function useTicking(): Ticking {
  const [busy, setBusy] = useState<ReadonlySet<string>>(new Set());
  const during = useCallback((key: string, work: Promise<void>) => {
    setBusy((before) => new Set([...before, key]));
    void work
      .catch(tellRefused)
      .finally(() => setBusy((before) => new Set([...before].filter((each) => each !== key))));
  }, []);
  return {
    isBusy: (key) => busy.has(key),
    tick: (task, doneOn) => during(task.key, markDone(task, doneOn)),
    untick: (task) => during(task.key, openAgain(task)),
  };
}
