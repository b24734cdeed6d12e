import { propagation } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { found } from '../../../../refusal.ts';
import { query } from '../../../../trpc/operation.ts';
import { loadSeedFacts, type PlantSeed, readPlantSeed, type SeedFacts } from '../../../sources/stores/reads.ts';
import { loadCurrentVersions, loadProtocolVersion, type ProtocolVersion } from '../../protocols/store.ts';
import { readForecastSettings } from '../forecast/reads.ts';
import {
  readContainers,
  readPlantReach,
  readSourceIds,
  readStandingPacks,
  type StandingPacks,
  type StartContainer,
} from './reads.ts';

/** A protocol that a batch can be started under. */
export interface StartProtocol extends Omit<ProtocolVersion, 'startContainerId' | 'targetContainerId'> {
  startContainer: StartContainer | null;
  targetContainer: StartContainer | null;
}

/** What there is to choose from when a batch of a plant is started. */
export interface StartChoices {
  plant: { id: string; scientificName: string };
  protocols: StartProtocol[];
  packs: StandingPacks[];
  /** What is known of the seed of each of its sources. */
  seed: SeedFacts[];
  /** The plant's own figure of its seed, for sources whose seed nobody counted. */
  plantSeed: PlantSeed | null;
  /** The confidence the nursery plans with. */
  confidence: number;
}

/** The current protocols of the plant, and the version asked for where that is another one, as for a plan made under it. */
export const readStartChoices = query({
  name: 'readStartChoices',
  input: propagation.readStartChoices,
  roles: EVERYONE,
  read: async (context, { plantId, versionId }): Promise<StartChoices> => {
    const { scientificName } = found(await readPlantReach(context, plantId), 'plant', 'plantId');
    const current = await loadCurrentVersions(context, [plantId]);
    const asked =
      versionId && !current.some((version) => version.versionId === versionId)
        ? [await loadProtocolVersion(context, versionId, 'versionId')]
        : [];
    const versions = [...current, ...asked.filter((version) => version.plantId === plantId)];
    const containers = await readContainers(
      context,
      versions.flatMap((version) => [version.startContainerId, version.targetContainerId].filter((id) => id !== null)),
    );
    const containerOf = (id: string | null) => containers.find((container) => container.id === id) ?? null;
    return {
      plant: { id: plantId, scientificName },
      protocols: versions.map(({ startContainerId, targetContainerId, ...version }) => ({
        ...version,
        startContainer: containerOf(startContainerId),
        targetContainer: containerOf(targetContainerId),
      })),
      packs: await readStandingPacks(context, plantId),
      seed: await loadSeedFacts(context, await readSourceIds(context, plantId)),
      plantSeed: await readPlantSeed(context, plantId),
      confidence: (await readForecastSettings(context)).planConfidence,
    };
  },
});
