import { useCommand } from '../../lib/outbox/index.ts';
import { tellRefused } from '../../lib/tell-refused.ts';
import { messages } from '../../messages/index.ts';
import { toast } from '../../ui/feedback/index.ts';

/** Takes an entry back, and says so or why not. */
export function useReverse(): (entryId: string) => void {
  const reverse = useCommand('stock.reverseEntry');
  return (entryId) => {
    reverse.send({ entryId }).then(() => toast({ text: messages().propagation.page.undoDone }), tellRefused);
  };
}
