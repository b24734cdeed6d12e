/** A file that was just taken or chosen: looked at once more, given a caption, and sent. */
import { useEffect, useState } from 'react';
import { fieldSentences, sentenceOf } from '../../lib/api/index.ts';
import { useDayHere } from '../../lib/clock/index.ts';
import { newId } from '../../lib/ids.ts';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../../ui/action/index.ts';
import { toast } from '../../ui/feedback/index.ts';
import { DateField, TextField } from '../../ui/fields/index.ts';
import { Form, FormActions } from '../../ui/form/index.ts';
import { Sheet } from '../../ui/overlay/index.ts';
import type { Subject } from './attachments.ts';
import { isPaper, useUpload } from './use-upload.ts';

export interface AddSheetProps {
  subject: Subject;
  file: File;
  onClose: () => void;
}

export function AddSheet({ subject, file, onClose }: AddSheetProps) {
  const { files: say } = useMessages();
  const today = useDayHere();
  const paper = isPaper(file);
  const [attachmentId] = useState(newId);
  const [caption, setCaption] = useState(() => (paper ? file.name.replace(/\.pdf$/i, '').slice(0, 500) : ''));
  const [takenOn, setTakenOn] = useState('');
  const [attempt, setAttempt] = useState(0);
  const { send, busy, failure, isTooLarge } = useUpload(file);
  const errors = failure ? fieldSentences(failure) : {};
  const known = ['caption', 'takenOn'].some((name) => name in errors);
  const save = async () => {
    if (busy || isTooLarge) return;
    if (!(await send({ attachmentId, subject, caption, ...(takenOn && { takenOn }) })))
      return setAttempt((count) => count + 1);
    toast({ text: paper ? say.paperAdded : say.added });
    onClose();
  };
  return (
    <Sheet open onClose={onClose} title={paper ? say.newPaper : say.newPhoto}>
      <Form
        errors={known ? errors : {}}
        problem={failure && !known ? sentenceOf(failure) : undefined}
        attempt={attempt}
        onSubmit={() => void save()}
      >
        {paper ? <p>{file.name}</p> : <Preview file={file} />}
        <TextField label={say.caption} name="caption" optional value={caption} onChange={setCaption} />
        <DateField
          label={say.day}
          hint={paper ? undefined : say.dayHint}
          name="takenOn"
          optional
          max={today ?? undefined}
          value={takenOn}
          onChange={setTakenOn}
        />
        <FormActions>
          <Button type="submit" look="primary" busy={busy} disabled={isTooLarge}>
            {paper ? say.savePaper : say.save}
          </Button>
        </FormActions>
        <p role="status">{busy ? say.sending : ''}</p>
      </Form>
    </Sheet>
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
  return address && <img className="photo-large" src={address} alt={say.preview} />;
}
