import { fields } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query } from '../../../../trpc/operation.ts';
import { loadProtocolVersion } from '../store.ts';
import { readProtocol } from './read-protocol.ts';
import { readLetterhead } from './reads.ts';

/** A version as it is printed. Asked for by the address of its page, not by a procedure. */
export const readProtocolPaper = query({
  name: 'readProtocolPaper',
  input: z.strictObject({ versionId: fields.id }),
  roles: EVERYONE,
  read: async (context, { versionId }) => {
    const { protocolId } = await loadProtocolVersion(context, versionId, 'versionId');
    return {
      protocol: await readProtocol.read(context, { protocolId, versionId }),
      ...(await readLetterhead(context)),
    };
  },
});
