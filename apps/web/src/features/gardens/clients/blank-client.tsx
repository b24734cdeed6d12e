/** Blanking a client's personal data on request: asked once more, since it cannot be taken back. */
import type { clients as contracts } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../lib/api/index.ts';
import { useCommand } from '../../../lib/outbox/index.ts';
import { tellRefused } from '../../../lib/tell-refused.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { toast } from '../../../ui/feedback/index.ts';
import { ConfirmAgain } from '../../../ui/overlay/index.ts';

export function BlankClient({ client }: { client: contracts.ClientRow }) {
  const { clients: words } = useMessages();
  const { mayBe } = useSession();
  const [asking, setAsking] = useState(false);
  const blank = useCommand('gardens.blankClient', { title: words.blank });
  if (!mayBe(OWNER) || client.isBlanked) return null;
  return (
    <>
      <div>
        <Button look="danger" onClick={() => setAsking(true)}>
          {words.blank}
        </Button>
      </div>
      <ConfirmAgain
        open={asking}
        title={words.blankTitle}
        confirm={words.blankConfirm}
        busy={blank.state === 'sending'}
        onClose={() => setAsking(false)}
        onConfirm={() =>
          void blank
            .send({ clientId: client.id })
            .then(() => toast({ text: words.blanked }), tellRefused)
            .finally(() => setAsking(false))
        }
      >
        <p>{words.blankText(client.name)}</p>
      </ConfirmAgain>
    </>
  );
}
