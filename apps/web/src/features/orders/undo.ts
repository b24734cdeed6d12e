/**
 * Telling that an entry was saved, with the way to take it back. The undo goes through the outbox itself and not through a component: the
 * row that made the entry is often gone by the time somebody thinks again.
 */
import type { CommandBody } from '../../lib/api/index.ts';
import { newCommandId } from '../../lib/ids.ts';
import { outbox } from '../../lib/outbox/index.ts';
import { tellRefused } from '../../lib/tell-refused.ts';
import { messages } from '../../messages/index.ts';
import { toast } from '../../ui/feedback/index.ts';

export function tellUndoable(text: string, entryId: string): void {
  toast({ text, undo: () => takeBack(entryId) });
}

/** Takes an entry back as a whole, and says so or why not. */
export function takeBack(entryId: string): void {
  const body: CommandBody<'stock.reverseEntry'> = { entryId };
  const { orders } = messages();
  void outbox
    .enter({
      id: newCommandId(),
      name: 'stock.reverseEntry',
      title: orders.list.takeBack,
      body,
      creates: [],
      from: window.location.pathname,
    })
    .then(() => toast({ text: messages().orders.undone }), tellRefused);
}
