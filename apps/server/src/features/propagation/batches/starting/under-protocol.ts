import type { propagation } from '@rootclock/contracts';
import type { BatchUnit } from '@rootclock/domain';
import type * as z from 'zod/mini';
import { refuse } from '../../../../refusal.ts';
import type { ReadContext } from '../../../../trpc/operation.ts';
import { loadProtocolVersion, type ProtocolVersion } from '../../protocols/store.ts';
import { loadPlantName, type PlantFacts } from '../store.ts';

type Input = z.output<typeof propagation.startBatch>;

/** What a batch is started with, once its protocol has filled in what was left out. */
export interface Setup {
  versionId: string | null;
  unit: BatchUnit;
  containerId: string | null;
  targetContainerId: string | null;
  /** Null without a protocol. */
  stagePosition: number | null;
}

/** What is drawn from packs in stratification has that behind it: it begins with the stage after. */
function firstStage(version: ProtocolVersion, isDrawn: boolean): number {
  const stratified = isDrawn ? version.stages.findIndex(({ kind }) => kind === 'stratification') : -1;
  return Math.min(stratified + 1, version.stages.length - 1);
}

/**
 * The protocol's start unit, container and target stand in for what the input leaves out; null means none. Its container belongs to its unit: who
 * starts in another unit says the container as well.
 */
export async function setUp(context: ReadContext, input: Input, plant: PlantFacts): Promise<Setup> {
  if (!input.protocolVersionId) {
    const unit = input.unit ?? refuse('invalid-input', { issues: [{ path: 'unit', problem: 'required' }] }, 'unit');
    return {
      versionId: null,
      unit,
      containerId: input.containerId ?? null,
      targetContainerId: input.targetContainerId ?? null,
      stagePosition: null,
    };
  }
  const version = await loadProtocolVersion(context, input.protocolVersionId, 'protocolVersionId');
  if (version.plantId !== plant.id) {
    refuse(
      'protocol-of-other-plant',
      { protocolPlant: await loadPlantName(context, version.plantId), plant: plant.scientificName },
      'protocolVersionId',
    );
  }
  if (version.method !== input.method)
    refuse('protocol-of-other-method', { protocolMethod: version.method, method: input.method }, 'protocolVersionId');
  const stagePosition = input.stagePosition ?? firstStage(version, input.fromPacks != null);
  if (stagePosition >= version.stages.length)
    refuse(
      'stage-not-in-protocol',
      { position: stagePosition, stages: version.stages.map(({ kind }) => kind) },
      'stagePosition',
    );
  const unit = input.unit ?? version.startUnit;
  const ownContainer = unit === version.startUnit ? version.startContainerId : null;
  return {
    versionId: version.versionId,
    unit,
    stagePosition,
    containerId: input.containerId === undefined ? ownContainer : input.containerId,
    targetContainerId: input.targetContainerId === undefined ? version.targetContainerId : input.targetContainerId,
  };
}
