/** The owner's way to the reference plants of a nursery that has none yet. */
import { OWNER } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';

export function LoadReference() {
  const { list: say } = useMessages().plants;
  const { mayBe } = useSession();
  const load = useCommand('plants.loadReference', { title: say.loadReference });
  if (!mayBe(OWNER)) return null;
  const begin = () =>
    load.send({}).then(
      ({ plants }) => toast({ text: say.loaded(plants) }),
      () => undefined,
    );
  return (
    <Button look="primary" busy={load.state === 'sending' || load.state === 'waiting'} onClick={() => void begin()}>
      {say.loadReference}
    </Button>
  );
}
