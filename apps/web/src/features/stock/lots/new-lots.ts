/** What is said after new lots were made: their codes to write on labels, a way to the lot, and whether its window is lost already. */
import { useNavigate } from '@tanstack/react-router';
import { queryClient, trpc } from '../../../lib/api/index.ts';
import { paths } from '../../../lib/paths.ts';
import { messages } from '../../../messages/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { useUndoable } from './undo.ts';

export interface MadeLots {
  entryId: string;
  lots: { lotId: string; code: string }[];
}

export function useTellNewLots(): (say: (code: string) => string, made: MadeLots) => void {
  const tell = useUndoable();
  const navigate = useNavigate();
  return (say, { entryId, lots }) => {
    const [first] = lots;
    if (!first) return;
    const { sheets } = messages().lots;
    tell(say(lots.map(({ code }) => code).join(', ')), entryId, {
      label: sheets.open(first.code),
      onAction: () => void navigate({ to: paths.lot(first.lotId) }),
    });
    void warnWithoutWindow(first);
  };
}

/** Told at once, while the plants are still on the potting bench and could go elsewhere. */
async function warnWithoutWindow({ lotId, code }: { lotId: string; code: string }): Promise<void> {
  const lot = await queryClient.fetchQuery(trpc.stock.readLot.queryOptions({ lotId }));
  if (lot.plantByState === 'no-window') toast({ tone: 'problem', text: messages().lots.sheets.noWindow(code) });
}
