import type { StageDetail } from '@rootclock/domain';
import type { ReferenceProtocol } from '../../../../reference/index.ts';
import { referenceId } from '../../../plants/reference-load.ts';

/** A reference protocol with the ids it has in a nursery. */
export interface ReferenceRow extends Pick<
  ReferenceProtocol,
  'method' | 'seedsPerCell' | 'startUnit' | 'texts' | 'standing' | 'source'
> {
  protocolId: string;
  versionId: string;
  plantId: string;
  startContainerId: string | null;
  targetContainerId: string | null;
  stages: (StageDetail & { versionId: string; position: number })[];
}

/** The rows of a protocol. A container that the nursery does not have is left open. */
export function rowOf(
  nurseryId: string,
  protocol: ReferenceProtocol,
  containers: ReadonlyMap<string, string>,
): ReferenceRow {
  const { plantCode, method, seedsPerCell, startUnit, texts, standing, source } = protocol;
  const key = `${plantCode}/${method}`;
  const versionId = referenceId(nurseryId, 'protocol-version', key);
  const containerOf = (code: string | null) => (code === null ? null : (containers.get(code) ?? null));
  return {
    protocolId: referenceId(nurseryId, 'protocol', key),
    versionId,
    plantId: referenceId(nurseryId, 'plant', plantCode),
    method,
    seedsPerCell,
    startUnit,
    texts,
    standing,
    source,
    startContainerId: containerOf(protocol.startContainerCode),
    targetContainerId: containerOf(protocol.targetContainerCode),
    stages: protocol.stages.map(({ containerCode, ...stage }, position) => ({
      ...stage,
      versionId,
      position,
      containerId: containerOf(containerCode),
    })),
  };
}
