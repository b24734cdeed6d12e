/** A photo small, which opens it large. */
import { useState } from 'react';
import { useFormat } from '../../lib/format/index.ts';
import { useMessages } from '../../messages/index.ts';
import { type Attachment, fileAddress, photosOf, type Subject, useAttachments } from './attachments.ts';
import { AttachmentSheet } from './attachment-sheet.tsx';
import './files.css';

export function PhotoTile({ photo, size }: { photo: Attachment; size: 'list' | 'head' }) {
  const { files: say } = useMessages();
  const { dates } = useFormat();
  const [open, setOpen] = useState(false);
  return (
    <>
      <button
        type="button"
        className={`photo-tile photo-tile-${size}`}
        aria-label={say.open(photo.caption, dates.short(photo.takenOn))}
        onClick={() => setOpen(true)}
      >
        <img src={fileAddress(photo.id, 'thumb')} alt="" loading="lazy" />
      </button>
      {open && <AttachmentSheet attachment={photo} onClose={() => setOpen(false)} />}
    </>
  );
}

/** The newest photo of a subject, for the head of its page. */
export function HeadPhoto({ subject }: { subject: Subject }) {
  const [newest] = photosOf(useAttachments(subject));
  return newest ? <PhotoTile key={newest.id} photo={newest} size="head" /> : null;
}
