/** StartNow: one tap that starts a planned batch today at the place chosen above, and can be taken back. */
import { useSession } from '../../../lib/api/index.ts';
import { newId } from '../../../lib/ids.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { useReverse } from '../../propagation/use-reverse.ts';
import type { PlanRow } from './plan-words.ts';
import { usePlaceCode } from './use-place-code.ts';

export function StartNow({ row, what, placeId }: { row: PlanRow; what: string; placeId: string }) {
  const { plan: say } = useMessages().planning;
  const { today } = useSession();
  const reverse = useReverse();
  const placeCode = usePlaceCode(placeId);
  const command = useCommand('propagation.startBatch', { title: say.startOf(what) });
  if (placeCode === null) return <p className="plan-hint">{say.choosePlace}</p>;
  const start = () => {
    command
      .send({ batchId: newId(), ...row.start, placeId, happenedOn: today, note: '' })
      .then(({ code, entryId }) => toast({ text: say.started(code), undo: () => reverse(entryId) }), tellRefused);
  };
  const busy = command.state === 'sending' || command.state === 'waiting';
  return (
    <Button look="primary" busy={busy} aria-label={say.startNowOf(what, placeCode)} onClick={start}>
      {say.startNow(placeCode)}
    </Button>
  );
}
