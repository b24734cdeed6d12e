/** The owner's way to the reference protocols that a nursery does not have yet: told of while some are missing, and gone once they are here. */
import { useCommand } from '../../../../lib/outbox/index.ts';
import { tellRefused } from '../../../../lib/tell-refused.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { Callout, toast } from '../../../../ui/feedback/index.ts';

export function LoadReferenceProtocols({ missing }: { missing: number }) {
  const { list: say } = useMessages().propagation.protocols;
  const load = useCommand('propagation.loadReferenceProtocols', { title: say.load });
  if (missing === 0) return null;
  const begin = () => load.send({}).then(({ protocols }) => toast({ text: say.loaded(protocols) }), tellRefused);
  return (
    <Callout
      tone="note"
      actions={
        <Button busy={load.state === 'sending' || load.state === 'waiting'} onClick={() => void begin()}>
          {say.load}
        </Button>
      }
    >
      {say.missing(missing)} {say.loadText}
    </Callout>
  );
}
