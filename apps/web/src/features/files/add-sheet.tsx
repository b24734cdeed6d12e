/** A file that was just taken or chosen: looked at once more, given a caption, and entered. It goes into the outbox beside its entry. */
import { files as contracts } from '@rootclock/contracts';
import { MOST_FILE_BYTES, MOST_FILE_MEGABYTES } from '@rootclock/domain';
import { useEffect, useState } from 'react';
import { useDayHere } from '../../lib/clock/index.ts';
import { useCommandForm } from '../../lib/form/index.ts';
import { newId } from '../../lib/ids.ts';
import { useCommand } from '../../lib/outbox/index.ts';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../../ui/action/index.ts';
import { Callout, toast } from '../../ui/feedback/index.ts';
import { DateField, TextField } from '../../ui/fields/index.ts';
import { Form, FormActions } from '../../ui/form/index.ts';
import { Sheet } from '../../ui/overlay/index.ts';
import type { Subject } from './attachments.ts';

export interface AddSheetProps {
  subject: Subject;
  file: File;
  onClose: () => void;
}

const isPaper = (file: File): boolean => file.type === 'application/pdf';

export function AddSheet({ subject, file, onClose }: AddSheetProps) {
  const { files: say, errors } = useMessages();
  return (
    <Sheet open onClose={onClose} title={isPaper(file) ? say.newPaper : say.newPhoto}>
      {file.size > MOST_FILE_BYTES ? (
        <Callout tone="refusal" announce>
          {errors['file-too-large']({ mostMegabytes: MOST_FILE_MEGABYTES })}
        </Callout>
      ) : (
        <AddForm subject={subject} file={file} onClose={onClose} />
      )}
    </Sheet>
  );
}

function AddForm({ subject, file, onClose }: AddSheetProps) {
  const { files: say, ui } = useMessages();
  const today = useDayHere();
  const paper = isPaper(file);
  const [attachmentId] = useState(newId);
  const title = paper ? say.newPaper : say.newPhoto;
  const command = useCommand(paper ? 'files.addPaper' : 'files.addPhoto', { title });
  const withFile: typeof command = { ...command, send: (body) => command.send(body, file) };
  const form = useCommandForm({
    command: withFile,
    contract: contracts.fileEntry,
    initial: { caption: paper ? file.name.replace(/\.pdf$/i, '').slice(0, 500) : '', takenOn: '' },
    body: ({ caption, takenOn }) => ({ attachmentId, subject, caption, ...(takenOn && { takenOn }) }),
    onSaved: () => {
      toast({ text: paper ? say.paperAdded : say.added });
      onClose();
    },
  });
  return (
    <Form {...form.props}>
      {paper ? <p>{file.name}</p> : <Preview file={file} />}
      <TextField label={say.caption} optional {...form.field('caption')} />
      <DateField
        label={say.day}
        hint={paper ? undefined : say.dayHint}
        optional
        max={today ?? undefined}
        {...form.field('takenOn')}
      />
      <FormActions>
        <Button type="submit" look="primary" busy={form.busy}>
          {paper ? say.savePaper : say.save}
        </Button>
        {/* Nobody has to stand and wait for a signal: the entry is kept with its file. */}
        {form.state === 'waiting' && <Button onClick={onClose}>{ui.close}</Button>}
      </FormActions>
      <p role="status">{form.state === 'waiting' ? ui.kept : form.state === 'sending' ? say.sending : ''}</p>
    </Form>
  );
}

/** The chosen file as this browser shows it; what it cannot show the server may still be able to read. */
function Preview({ file }: { file: File }) {
  const { files: say } = useMessages();
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(file);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  return address && <img className="photo-large" src={address} alt={say.preview} onError={() => setAddress(null)} />;
}
