/** One photo, large, with what is said of it; whoever works in the field can put that right or take the photo away. */
import { files as contracts } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { useSession } from '../../lib/api/index.ts';
import { useDayHere } from '../../lib/clock/index.ts';
import { Submit, useCommandForm } from '../../lib/form/index.ts';
import { useFormat } from '../../lib/format/index.ts';
import { useCommand } from '../../lib/outbox/index.ts';
import { tellRefused } from '../../lib/tell-refused.ts';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../../ui/action/index.ts';
import { toast } from '../../ui/feedback/index.ts';
import { DateField, TextField } from '../../ui/fields/index.ts';
import { Form } from '../../ui/form/index.ts';
import { Sheet } from '../../ui/overlay/index.ts';
import { type Attachment, fileAddress } from './attachments.ts';
import './files.css';

interface AttachmentSheetProps {
  attachment: Attachment;
  onClose: () => void;
}

export function AttachmentSheet({ attachment, onClose }: AttachmentSheetProps) {
  const { files: say } = useMessages();
  const { dates } = useFormat();
  const { mayBe } = useSession();
  const { id, kind, caption, takenOn, addedBy } = attachment;
  const day = dates.long(takenOn);
  return (
    <Sheet open onClose={onClose} title={kind === 'paper' ? say.paper(caption) : caption || say.photoOf(day)}>
      <div className="stack">
        {kind === 'photo' && (
          <img className="photo-large" src={fileAddress(id, 'view')} alt={caption || say.photoOf(day)} />
        )}
        <p className="row">
          <span>{[day, addedBy && say.by(addedBy)].filter(Boolean).join(' · ')}</span>
          <a className="text-link" href={fileAddress(id, 'full')} target="_blank" rel="noreferrer">
            {kind === 'paper' ? say.paper('') : say.full}
          </a>
        </p>
        {mayBe(FIELD) && <SaidForm attachment={attachment} onClose={onClose} />}
      </div>
    </Sheet>
  );
}

function SaidForm({ attachment, onClose }: AttachmentSheetProps) {
  const { files: say } = useMessages();
  const today = useDayHere();
  const { id: attachmentId, edition, caption, takenOn } = attachment;
  const form = useCommandForm({
    command: useCommand('files.editAttachment', { title: `${say.caption}: ${caption}` }),
    contract: contracts.editAttachment,
    initial: { caption, takenOn },
    body: (values) => ({ attachmentId, ...values }),
    row: { id: 'attachmentId', edition },
    words: { caption: { label: say.caption }, takenOn: { label: say.day } },
    onSaved: () => {
      toast({ text: say.changed });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      <TextField label={say.caption} optional {...form.field('caption')} />
      <DateField label={say.day} max={today ?? undefined} {...form.field('takenOn')} />
      <Submit form={form} others={<RemoveButton attachmentId={attachmentId} onDone={onClose} />}>
        {say.saveChanges}
      </Submit>
    </Form>
  );
}

function RemoveButton({ attachmentId, onDone }: { attachmentId: string; onDone: () => void }) {
  const { files: say } = useMessages();
  const remove = useCommand('files.removeAttachment', { title: say.remove });
  const restore = useCommand('files.restoreAttachment', { title: say.restored });
  const bringBack = () => void restore.send({ attachmentId }).then(() => toast({ text: say.restored }), tellRefused);
  const takeAway = () =>
    void remove.send({ attachmentId }).then(() => {
      toast({ text: say.removed, undo: bringBack });
      onDone();
    }, tellRefused);
  return (
    <Button look="danger" busy={remove.state === 'sending'} onClick={takeAway}>
      {say.remove}
    </Button>
  );
}
