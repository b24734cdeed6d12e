/** Retires a protocol, or takes it back. Nothing is lost by either, so it is done at once and can be undone. */
import type { propagation as contracts } from '@rootclock/contracts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { tellRefused } from '../../../../lib/tell-refused.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { toast } from '../../../../ui/feedback/index.ts';

export function RetireProtocol({ protocol }: { protocol: contracts.ProtocolPage }) {
  const { page: say } = useMessages().propagation.protocols;
  const retire = useCommand('propagation.retireProtocol', { title: `${say.retire}: ${protocol.plant.scientificName}` });
  const restore = useCommand('propagation.restoreProtocol', {
    title: `${say.restore}: ${protocol.plant.scientificName}`,
  });
  const body = { protocolId: protocol.protocolId };
  const takeBack = () => void restore.send(body).then(() => toast({ text: say.restoredToast }), tellRefused);
  const takeOut = () =>
    void retire.send(body).then(() => toast({ text: say.retiredToast, undo: takeBack }), tellRefused);
  return (
    <Button
      busy={retire.state === 'sending' || restore.state === 'sending'}
      onClick={protocol.isRetired ? takeBack : takeOut}
    >
      {protocol.isRetired ? say.restore : say.retire}
    </Button>
  );
}
