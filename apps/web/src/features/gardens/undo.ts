/** `const tell = useUndoable(); tell('12 planted', entryId)`: says that an entry was saved and offers to take it back as a whole. */
import { CommandError, sentenceOf } from '../../lib/api/index.ts';
import { useCommand } from '../../lib/outbox/index.ts';
import { messages, useMessages } from '../../messages/index.ts';
import { toast } from '../../ui/feedback/index.ts';

/** Says why something behind a button without a form was refused. */
export function tellRefused(error: unknown): void {
  if (error instanceof CommandError) toast({ tone: 'problem', text: sentenceOf(error.failure) });
  else throw error;
}

export function useUndoable(): (text: string, entryId: string) => void {
  const { gardens } = useMessages();
  const { send } = useCommand('stock.reverseEntry', { title: gardens.orders.takeBack });
  return (text, entryId) =>
    toast({
      text,
      undo: () => void send({ entryId, note: '' }).then(() => toast({ text: messages().gardens.undone }), tellRefused),
    });
}
