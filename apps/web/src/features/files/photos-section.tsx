/** Photos and papers of a page's subject, and the ways to add one. */
import { FIELD } from '@rootclock/domain';
import { useRef, useState } from 'react';
import { useSession } from '../../lib/api/index.ts';
import { useFormat } from '../../lib/format/index.ts';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../../ui/action/index.ts';
import { Section } from '../../ui/layout/index.ts';
import { AddSheet } from './add-sheet.tsx';
import { AttachmentSheet } from './attachment-sheet.tsx';
import { type Attachment, photosOf, type Subject, useAttachments } from './attachments.ts';
import { PhotoTile } from './photo-tile.tsx';
import './files.css';

/** Without HEIC among them phones hand their photos over as JPEG. */
const PHOTOS = 'image/jpeg,image/png,image/webp';

export function PhotosSection({ subject }: { subject: Subject }) {
  const { files: say } = useMessages();
  const { dates } = useFormat();
  const { mayBe } = useSession();
  const attachments = useAttachments(subject);
  const photos = photosOf(attachments);
  const papers = attachments.filter(({ kind }) => kind === 'paper');
  return (
    <Section
      title={say.title}
      aside={photos.length > 0 ? photos.length : undefined}
      actions={mayBe(FIELD) && <AddButtons subject={subject} />}
    >
      {attachments.length === 0 && <p className="photo-none">{say.none}</p>}
      {photos.length > 0 && (
        <ul className="photo-list">
          {photos.map((photo) => (
            <li key={photo.id} className="photo-item">
              <PhotoTile photo={photo} size="list" />
              <p className="photo-words">
                <span className="photo-day">{dates.short(photo.takenOn)}</span> {photo.caption}
              </p>
            </li>
          ))}
        </ul>
      )}
      {papers.length > 0 && (
        <ul className="paper-list">
          {papers.map((paper) => (
            <li key={paper.id}>
              <PaperButton paper={paper} />
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function PaperButton({ paper }: { paper: Attachment }) {
  const { files: say } = useMessages();
  const { dates } = useFormat();
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button look="quiet" onClick={() => setOpen(true)}>
        {say.paper(paper.caption)}, {dates.short(paper.takenOn)}
      </Button>
      {open && <AttachmentSheet attachment={paper} onClose={() => setOpen(false)} />}
    </>
  );
}

function AddButtons({ subject }: { subject: Subject }) {
  const { files: say } = useMessages();
  const [chosen, setChosen] = useState<File | null>(null);
  return (
    <>
      <FileButton label={say.take} accept={PHOTOS} camera onChoose={setChosen} />
      <FileButton label={say.choose} accept={`${PHOTOS},application/pdf`} onChoose={setChosen} />
      {chosen && <AddSheet subject={subject} file={chosen} onClose={() => setChosen(null)} />}
    </>
  );
}

interface FileButtonProps {
  label: string;
  accept: string;
  /** Opens a phone's camera instead of its pictures. */
  camera?: boolean;
  onChoose: (file: File) => void;
}

function FileButton({ label, accept, camera = false, onChoose }: FileButtonProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <span className={camera ? 'photo-camera' : undefined}>
      <Button onClick={() => input.current?.click()}>{label}</Button>
      <input
        ref={input}
        type="file"
        hidden
        accept={accept}
        capture={camera ? 'environment' : undefined}
        aria-label={label}
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          // The same file may be chosen again after it was refused.
          event.target.value = '';
          if (file) onChoose(file);
        }}
      />
    </span>
  );
}
