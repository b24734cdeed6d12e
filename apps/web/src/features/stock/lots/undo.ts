/** `const tell = useUndoable(); tell('12 moved.', entryId)`: says what was done and offers to take it back as a whole. */
import { useCallback } from 'react';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { messages, useMessages } from '../../../messages/index.ts';
import { toast, type ToastContent } from '../../../ui/feedback/index.ts';

/** Takes an entry back, and says so or why not. */
export function useTakeBack(): (entryId: string) => void {
  const { lots } = useMessages();
  const { send } = useCommand('stock.reverseEntry', { title: lots.story.takeBack });
  return useCallback(
    (entryId) => {
      send({ entryId }).then(() => toast({ text: messages().lots.sheets.undone }), tellRefused);
    },
    [send],
  );
}

export function useUndoable(): (text: string, entryId: string, action?: ToastContent['action']) => void {
  const takeBack = useTakeBack();
  return (text, entryId, action) => toast({ text, undo: () => takeBack(entryId), ...(action ? { action } : {}) });
}
