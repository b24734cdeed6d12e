import { sources } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../trpc/operation.ts';
import { loadSource, setSourceRetired } from '../store.ts';

/** Takes a retirement back. */
export const restoreSource = command({
  name: 'restoreSource',
  input: sources.restoreSource,
  roles: GROWERS,
  run: async (context, { sourceId }) => {
    await loadSource(context, sourceId);
    await setSourceRetired(context, sourceId, null);
    return { sourceId };
  },
});
