import { propagation } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { found } from '../../../../refusal.ts';
import { query } from '../../../../trpc/operation.ts';
import { readBatches, readHead, readVersions } from './reads.ts';

const EMPTY = Object.fromEntries(
  propagation.PROTOCOL_TEXTS.map((field) => [field, '']),
) as propagation.ProtocolVersionPage['texts'];

/** One version of a protocol with all it says, the one before it, and what was started under each. */
export const readProtocol = query({
  name: 'readProtocol',
  input: propagation.readProtocol,
  roles: EVERYONE,
  read: async (context, { protocolId, versionId }): Promise<propagation.ProtocolPage> => {
    const head = await readHead(context, protocolId);
    const versions = (await readVersions(context, protocolId)).map(({ batches, openBatches, ...version }) => ({
      row: {
        versionId: version.versionId,
        number: version.number,
        madeOn: version.madeOn,
        personName: version.personName,
        changeNote: version.changeNote,
        batches,
        openBatches,
      },
      page: { ...version, texts: { ...EMPTY, ...version.texts } } satisfies propagation.ProtocolVersionPage,
    }));
    const at = versions.findIndex(({ row }) => row.versionId === (versionId ?? head.currentVersionId));
    const version = found(versions[at], 'protocol', 'versionId');
    return {
      ...head,
      version: version.page,
      before: versions[at + 1]?.page ?? null,
      versions: versions.map(({ row }) => row),
      batches: await readBatches(context, protocolId),
    };
  },
});
