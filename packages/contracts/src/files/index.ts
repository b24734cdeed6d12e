import { FILE_SUBJECTS, MOST_FILE_BYTES, type FileKind } from '@rootclock/domain';
import * as z from 'zod/mini';
import { asRead, calendarDate, id, text } from '../fields.ts';

/** What people say of a photo or a paper. */
export const said = z.strictObject({ caption: z._default(text(z.trim(), z.maxLength(500)), '') });

const subject = z.strictObject({ kind: z.enum(FILE_SUBJECTS), id });

/** The file itself, which comes beside the entry and not within its JSON. */
const bytes = z.custom<Uint8Array>((value) => value instanceof Uint8Array && value.length <= MOST_FILE_BYTES);

/** What is said with a file. Its day is that which a photo itself tells, or else today, unless one is named. */
const entry = { attachmentId: id, subject, ...said.shape, takenOn: z.optional(calendarDate) };
export const fileEntry = z.strictObject(entry);
export const addPhoto = z.strictObject({ ...entry, bytes });
/** A PDF. */
export const addPaper = z.strictObject({ ...entry, bytes });
export const editAttachment = z.strictObject({ attachmentId: id, ...said.shape, takenOn: calendarDate, ...asRead });
export const removeAttachment = z.strictObject({ attachmentId: id });
export const restoreAttachment = z.strictObject({ attachmentId: id });

export const listAttachments = z.strictObject({ subject });

/** A photo or paper of a subject, as lists, stories and heads of pages show it. */
export interface AttachmentRow extends z.output<typeof said> {
  id: string;
  edition: number;
  kind: FileKind;
  takenOn: string;
  addedBy: string | null;
  /** Of the whole photo, null for papers. */
  width: number | null;
  height: number | null;
}
