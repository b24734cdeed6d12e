import { propagation } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadProtocol, markProtocolRetired } from '../store.ts';

/** Takes a retired protocol back into use, in the version it had. */
export const restoreProtocol = command({
  name: 'restoreProtocol',
  input: propagation.restoreProtocol,
  roles: GROWERS,
  run: async (context, { protocolId }) => {
    await loadProtocol(context, protocolId);
    await markProtocolRetired(context, protocolId, null);
    context.touched.features.add('propagation');
    return { protocolId };
  },
});
