import { files } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';
import { editing } from '../../../trpc/editing.ts';
import { attachmentEdits, requireAttachment, updateAttachment } from '../store.ts';

export const editAttachment = editing({
  name: 'editAttachment',
  input: files.editAttachment,
  roles: FIELD,
  edits: attachmentEdits,
  run: async (context, input) => {
    const { today, touched } = context;
    await requireAttachment(context, input.attachmentId);
    if (input.takenOn > today) refuse('day-in-future', { day: input.takenOn, today }, 'takenOn');
    await updateAttachment(context, input);
    touched.features.add('files');
    return { attachmentId: input.attachmentId };
  },
});
