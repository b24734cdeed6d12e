import { files } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { command } from '../../../trpc/operation.ts';
import { requireAttachment, setRemoved } from '../store.ts';

export const restoreAttachment = command({
  name: 'restoreAttachment',
  input: files.restoreAttachment,
  roles: FIELD,
  run: async (context, { attachmentId }) => {
    await requireAttachment(context, attachmentId);
    await setRemoved(context, attachmentId, null);
    context.touched.features.add('files');
    return { attachmentId };
  },
});
