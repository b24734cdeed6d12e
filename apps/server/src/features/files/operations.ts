import { addPaper } from './commands/add-paper.ts';
import { addPhoto } from './commands/add-photo.ts';
import { editAttachment } from './commands/edit-attachment.ts';
import { removeAttachment } from './commands/remove-attachment.ts';
import { restoreAttachment } from './commands/restore-attachment.ts';
import { listAttachments } from './reads.ts';

export const filesOperations = {
  addPhoto,
  addPaper,
  editAttachment,
  removeAttachment,
  restoreAttachment,
  listAttachments,
};
