import type { CommandContext } from '../../trpc/operation.ts';
import { blankAttachments } from './store.ts';

/** Takes out all that shows these sites, for whoever asked to be forgotten. What nothing else shows leaves the store once the command has committed. */
export async function blankFilesOf(context: CommandContext, siteIds: readonly string[]): Promise<void> {
  for (const hash of await blankAttachments(context, siteIds)) context.touched.lettingGo.add(hash);
  context.touched.features.add('files');
}
