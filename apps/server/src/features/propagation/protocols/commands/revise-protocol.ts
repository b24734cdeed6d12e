import { propagation } from '@rootclock/contracts';
import { GROWERS, stageDifferences } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command, type CommandContext } from '../../../../trpc/operation.ts';
import { draftContent, type ProtocolContent } from '../draft.ts';
import { insertVersion, loadProtocol, loadProtocolVersion, loadTexts, type ProtocolVersion } from '../store.ts';

/** A new version that batches are started under from now on. Batches under way keep the one they were started under. */
export const reviseProtocol = command({
  name: 'reviseProtocol',
  input: propagation.reviseProtocol,
  roles: GROWERS,
  run: async (context, input) => {
    const { protocolId, versionId, basedOnVersionId, changeNote } = input;
    const protocol = await loadProtocol(context, protocolId);
    if (protocol.isRetired)
      refuse('protocol-retired', { plant: protocol.scientificName, method: protocol.method }, 'protocolId');
    const before = await loadProtocolVersion(context, basedOnVersionId, 'basedOnVersionId');
    if (before.protocolId !== protocolId) refuse('not-found', { what: 'protocol' }, 'basedOnVersionId');
    if (!before.isCurrent)
      refuse(
        'protocol-moved-on',
        { number: protocol.currentNumber, madeOn: protocol.currentMadeOn },
        'basedOnVersionId',
      );
    const content = await draftContent(context, protocol.method, protocol.dormantMonths, input);
    if (await saysTheSame(context, before, content)) refuse('protocol-unchanged', { number: before.number });
    const number = protocol.currentNumber + 1;
    await insertVersion(context, {
      ...content,
      versionId,
      protocolId,
      number,
      standing: 'own setting',
      source: null,
      changeNote,
    });
    context.touched.features.add('propagation');
    return { protocolId, versionId, number };
  },
});

async function saysTheSame(
  context: CommandContext,
  before: ProtocolVersion,
  content: ProtocolContent,
): Promise<boolean> {
  const texts: Record<string, string> = await loadTexts(context, before.versionId);
  return (
    before.startUnit === content.startUnit &&
    before.startContainerId === content.startContainerId &&
    before.targetContainerId === content.targetContainerId &&
    before.seedsPerCell === content.seedsPerCell &&
    stageDifferences(before.stages, content.stages).length === 0 &&
    Object.entries(content.texts).every(([field, text]) => (texts[field] ?? '') === text)
  );
}
