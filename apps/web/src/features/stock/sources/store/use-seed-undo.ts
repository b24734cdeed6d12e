/** `const tell = useSeedUndo(); tell('12 g put in.', movementId)`: says what was booked and offers to take it back. */
import { useCommand } from '../../../../lib/outbox/index.ts';
import { tellRefused } from '../../../../lib/tell-refused.ts';
import { messages, useMessages } from '../../../../messages/index.ts';
import { toast } from '../../../../ui/feedback/index.ts';

export function useTakeSeedBack(): (movementId: string) => void {
  const { seed } = useMessages();
  const { send } = useCommand('sources.takeBackSeed', { title: seed.takeBack });
  return (movementId) =>
    void send({ movementId }).then(() => toast({ text: messages().seed.takenBackNow }), tellRefused);
}

export function useSeedUndo(): (text: string, movementId: string | null) => void {
  const takeBack = useTakeSeedBack();
  return (text, movementId) => toast({ text, ...(movementId === null ? {} : { undo: () => takeBack(movementId) }) });
}
