/** Takes a container out of the pickers, or back in. What stands in it is not touched. */
import type { plants as contracts } from '@rootclock/contracts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';

export function RetireContainer({ container, onDone }: { container: contracts.ContainerRow; onDone: () => void }) {
  const { containers: say } = useMessages().plants;
  const retire = useCommand('plants.retireContainer', { title: `${say.retire}: ${container.name}` });
  const restore = useCommand('plants.restoreContainer', { title: `${say.restore}: ${container.name}` });
  const body = { containerId: container.id };
  const takeBack = () => restore.send(body).then(() => toast({ text: say.saved(container.name) }), tellRefused);
  const takeOut = () =>
    retire
      .send(body)
      .then(() => toast({ text: say.retiredToast(container.name), undo: () => void takeBack() }), tellRefused);
  return (
    <Button
      busy={retire.state === 'sending' || restore.state === 'sending'}
      onClick={() => void (container.isRetired ? takeBack() : takeOut()).then(onDone)}
    >
      {container.isRetired ? say.restore : say.retire}
    </Button>
  );
}
