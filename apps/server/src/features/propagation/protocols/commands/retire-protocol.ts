import { propagation } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadProtocol, markProtocolRetired } from '../store.ts';

/** A protocol that nothing is started under any more; its versions stay, and so do the batches under way. */
export const retireProtocol = command({
  name: 'retireProtocol',
  input: propagation.retireProtocol,
  roles: GROWERS,
  run: async (context, { protocolId }) => {
    await loadProtocol(context, protocolId);
    await markProtocolRetired(context, protocolId, context.now);
    context.touched.features.add('propagation');
    return { protocolId };
  },
});
