import {
  countedIn,
  learnStages,
  NOTHING_TRIED,
  type PlanContainer,
  type PlanProtocol,
  sownIntoId,
  type ShareEvidence,
} from '@rootclock/domain';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadEvidence, type StageEvidence } from '../../propagation/learning/evidence.ts';
import { loadCurrentVersions, planOf, type ProtocolVersion } from '../../propagation/protocols/store.ts';
import type { PlanSettings } from './store.ts';

/** Of the interval that learning shows; the plan takes the posterior and not the interval. */
const INTERVAL = 0.9;

/** What was seen of seeds, as it would have been seen of cells with several of them: a cell passes when one of its seeds does. */
function inCells({ tried, passed, batches, ...row }: StageEvidence, seedsPerCell: number): StageEvidence {
  if (tried === 0) return { ...row, ...NOTHING_TRIED };
  const cells = Math.floor(tried / seedsPerCell);
  return { ...row, tried: cells, passed: Math.round(cells * (1 - (1 - passed / tried) ** seedsPerCell)), batches };
}

function passingOf(
  version: ProtocolVersion,
  counted: ReturnType<typeof countedIn>,
  evidence: readonly StageEvidence[],
  settings: PlanSettings,
): PlanProtocol['passing'] {
  const ofSeeds = counted === 'seeds';
  const seedsPerCell = version.seedsPerCell ?? 1;
  const own = evidence.filter(
    ({ plantId, method, label }) => plantId === version.plantId && method === version.method && label === version.label,
  );
  const seen = own.flatMap((row): (ShareEvidence & { stage: StageEvidence['stage'] })[] =>
    row.ofSeeds === ofSeeds || row.stage !== 'emergence' ? [row] : row.ofSeeds ? [inCells(row, seedsPerCell)] : [],
  );
  const learned = learnStages(
    { startUnit: ofSeeds ? 'tray' : 'cell', seedsPerCell: version.seedsPerCell, stages: version.stages },
    seen,
    {
      priorWeight: settings.priorWeight,
      evidenceLimit: settings.evidenceLimit,
      confidence: INTERVAL,
    },
  );
  // Where the protocol says that all pass and nobody ever saw one fail, there is nothing to be in doubt about.
  return learned.map(({ stage, covers, share, tried, batches, passed, alpha, beta, priorShare }) => {
    const isSure = priorShare === 1 && passed === tried;
    return { stage, covers, share: isSure ? 1 : share, tried, batches, shapes: isSure ? null : { alpha, beta } };
  });
}

/** The current protocols of plants, with what the nursery's own record makes of their shares. */
export async function loadPlanProtocols(
  context: ReadContext,
  plantIds: readonly string[],
  containers: ReadonlyMap<string, PlanContainer>,
  settings: PlanSettings,
): Promise<PlanProtocol[]> {
  const versions = await loadCurrentVersions(context, plantIds);
  const evidence = await loadEvidence(context, plantIds);
  return versions
    .filter(({ stages }) => stages.length > 0)
    .map((version) => {
      const {
        versionId,
        protocolId,
        plantId,
        method,
        label,
        startUnit,
        startContainerId,
        targetContainerId,
        seedsPerCell,
      } = version;
      const sowingContainerId = version.stages.find(({ kind }) => kind === 'sowing')?.containerId ?? null;
      const sownInto = containers.get(sownIntoId({ startUnit, startContainerId, sowingContainerId }) ?? '') ?? null;
      return {
        versionId,
        protocolId,
        plantId,
        method,
        label,
        startUnit,
        startContainerId,
        targetContainerId,
        sowingContainerId,
        seedsPerCell,
        plan: planOf(version),
        passing: passingOf(version, countedIn({ startUnit }, sownInto), evidence, settings),
      };
    });
}
