import type { BatchUnit, PropagationMethod, StageKind, Standing } from '@rootclock/domain';
import type { ReadContext } from '../../../../trpc/operation.ts';
import { loadCurrentVersions } from '../../protocols/store.ts';
import { loadEvidence, type StageEvidence } from '../evidence.ts';

/** A plant's record under one method and one name of protocol: what the protocol says, and what the ledger shows. */
export interface RecordedShares {
  plantId: string;
  method: PropagationMethod;
  label: string;
  /** What the current protocol of this name says; null where there is none, so that the counts stand alone. */
  protocol: {
    protocolId: string;
    startUnit: BatchUnit;
    seedsPerCell: number | null;
    stages: { kind: StageKind; share: number; standing: Standing; source: string | null }[];
  } | null;
  evidence: Pick<StageEvidence, 'stage' | 'tried' | 'passed' | 'batches' | 'ofSeeds' | 'over'>[];
}

const keyOf = ({ plantId, method, label }: Pick<RecordedShares, 'plantId' | 'method' | 'label'>) =>
  `${plantId}/${method}/${label}`;

/** Everything that has a protocol in use, or that the ledger shows anything of. */
export async function loadRecordedShares(
  context: ReadContext,
  plantIds: readonly string[] | 'all',
): Promise<RecordedShares[]> {
  const shares = new Map<string, RecordedShares>();
  for (const version of await loadCurrentVersions(context, plantIds)) {
    const { plantId, method, label, protocolId, startUnit, seedsPerCell, stages } = version;
    shares.set(keyOf(version), {
      plantId,
      method,
      label,
      evidence: [],
      protocol: {
        protocolId,
        startUnit,
        seedsPerCell,
        stages: stages.map(({ kind, share, shareStanding, shareSource }) => ({
          kind,
          share,
          standing: shareStanding,
          source: shareSource,
        })),
      },
    });
  }
  for (const { plantId, method, label, stage, tried, passed, batches, ofSeeds, over } of await loadEvidence(
    context,
    plantIds,
  )) {
    const key = keyOf({ plantId, method, label });
    const known = shares.get(key) ?? { plantId, method, label, protocol: null, evidence: [] };
    known.evidence.push({ stage, tried, passed, batches, ofSeeds, over });
    shares.set(key, known);
  }
  return [...shares.values()];
}
