import { sources } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../trpc/operation.ts';
import { loadSource, setSourceRetired } from '../store.ts';

/** A source that is used up is no longer offered; what came of it stays readable. */
export const retireSource = command({
  name: 'retireSource',
  input: sources.retireSource,
  roles: GROWERS,
  run: async (context, { sourceId }) => {
    const source = await loadSource(context, sourceId);
    if (!source.retired) await setSourceRetired(context, source.id, context.now);
    return { sourceId };
  },
});
