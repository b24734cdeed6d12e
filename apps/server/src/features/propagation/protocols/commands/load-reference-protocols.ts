import { propagation } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadContainerCodes } from '../../../plants/containers/store.ts';
import { missingReference } from '../reference/missing.ts';
import { rowOf } from '../reference/rows.ts';
import { insertReferenceRows } from '../reference/store.ts';

/** What a new nursery begins with, and what an older one takes over with one tap; harmless when given again. */
export const loadReferenceProtocols = command({
  name: 'loadReferenceProtocols',
  input: propagation.loadReferenceProtocols,
  roles: OWNER,
  run: async (context) => {
    const missing = await missingReference(context);
    const containers = await loadContainerCodes(context);
    await insertReferenceRows(
      context,
      missing.map((protocol) => rowOf(context.nurseryId, protocol, containers)),
    );
    context.touched.features.add('propagation');
    return { protocols: missing.length };
  },
});
