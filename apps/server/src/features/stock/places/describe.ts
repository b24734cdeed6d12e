import type { stock } from '@rootclock/contracts';
import type * as z from 'zod/mini';
import { refuse } from '../../../refusal.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import { isCodeTaken, loadLineage, loadPlace, type PlaceFields } from './store.ts';

/** What was said of a place, as it is stored; refuses a code in use and a place that would lie in itself. */
export async function describePlace(
  context: CommandContext,
  input: z.output<typeof stock.addPlace>,
): Promise<PlaceFields> {
  if (await isCodeTaken(context, input.code, input.placeId)) refuse('code-taken', { code: input.code }, 'code');
  if (input.parentId) {
    const parent = await loadPlace(context, input.parentId, 'parentId');
    if (parent.retired) refuse('place-retired', { place: parent.code }, 'parentId');
    if ((await loadLineage(context, parent.id)).includes(input.placeId))
      refuse('place-in-itself', { place: input.code }, 'parentId');
  }
  return { ...input, name: input.name || input.code };
}
