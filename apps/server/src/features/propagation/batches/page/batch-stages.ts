import {
  type BatchEntry,
  type BeginningBasis,
  stageBeginnings,
  stageProgress,
  type StageProgress,
} from '@rootclock/domain';
import type { ReadContext } from '../../../../trpc/operation.ts';
import { loadProtocolVersion, planOf, type StoredStage } from '../../protocols/store.ts';

/** A stage of the batch with what the protocol says of it and why it is taken to have begun. */
export interface BatchStage extends StageProgress, Omit<StoredStage, keyof StageProgress> {
  basis: BeginningBasis | null;
}

/** The protocol a batch was started under, in the version it keeps. */
export interface BatchProtocol {
  versionId: string;
  protocolId: string;
  number: number;
  label: string;
  /** Whether batches are still started under this version. */
  isCurrent: boolean;
  stages: BatchStage[];
}

interface StagedBatch {
  protocolVersionId: string | null;
  startedOn: string;
  secondWinterOn: string | null;
}

export async function readBatchProtocol(
  context: ReadContext,
  batch: StagedBatch,
  entries: readonly BatchEntry[],
): Promise<BatchProtocol | null> {
  if (!batch.protocolVersionId) return null;
  const version = await loadProtocolVersion(context, batch.protocolVersionId);
  const plan = planOf(version);
  const begun = stageBeginnings(plan, entries);
  const { versionId, protocolId, number, label, isCurrent } = version;
  return {
    versionId,
    protocolId,
    number,
    label,
    isCurrent,
    stages: stageProgress(plan, batch.startedOn, begun, context.today, batch.secondWinterOn).map((progress, at) => {
      const stored = version.stages[at];
      if (!stored) throw new Error('a stage of the plan is none of its version');
      return {
        ...stored,
        ...progress,
        basis: begun.find(({ position }) => position === progress.position)?.basis ?? null,
      };
    }),
  };
}
