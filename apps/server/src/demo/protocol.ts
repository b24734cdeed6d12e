import type { PropagationMethod, StageKind } from '@rootclock/domain';
import { referenceId } from '../features/plants/reference-load.ts';
import { referenceProtocols } from '../reference/protocols/index.ts';
import type { Stage } from './stage.ts';

/** Some plants are propagated here by a method for which the reference knows no protocol: such batches are started without one. */
export const hasProtocol = (plant: string, method: PropagationMethod): boolean =>
  referenceProtocols.some((protocol) => protocol.plantCode === plant && protocol.method === method);

/** The version of a plant's protocol that is current on the day it is asked, and where its stages stand in it. */
export async function currentProtocol(
  stage: Stage,
  plant: string,
  method: PropagationMethod,
): Promise<{ versionId: string; position: (kind: StageKind) => number }> {
  const { version } = await stage
    .as('grower')
    .propagation.readProtocol({ protocolId: referenceId(stage.nurseryId, 'protocol', `${plant}/${method}`) });
  return {
    versionId: version.versionId,
    position: (kind) => {
      const found = version.stages.find((each) => each.kind === kind);
      if (!found) throw new Error(`the demo's protocol of ${plant} has no ${kind}`);
      return found.position;
    },
  };
}
