import { files } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { command } from '../../../trpc/operation.ts';
import { requireAttachment, setRemoved } from '../store.ts';

export const removeAttachment = command({
  name: 'removeAttachment',
  input: files.removeAttachment,
  roles: FIELD,
  run: async (context, { attachmentId }) => {
    await requireAttachment(context, attachmentId);
    await setRemoved(context, attachmentId, context.now);
    context.touched.features.add('files');
    return { attachmentId };
  },
});
