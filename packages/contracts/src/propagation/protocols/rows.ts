import type { BatchUnit, PaceDays, PropagationMethod, StageDetail, StageLight, Standing } from '@rootclock/domain';
import type { Page } from '../../fields.ts';
import type { ProtocolText } from './protocols.ts';

/** A protocol as a list shows it, by its version in use. */
export interface ProtocolRow {
  protocolId: string;
  versionId: string;
  method: PropagationMethod;
  label: string;
  number: number;
  madeOn: string;
  standing: Standing;
  isRetired: boolean;
  startUnit: BatchUnit;
  seedsPerCell: number | null;
  /** From start to ready, the sums of the stages. */
  totalDays: PaceDays;
  /** Of the stage of cold and moist, where there is one. */
  coldDays: PaceDays | null;
  /** Share of seeds or pieces that get ready, 0 to 1. */
  shareReady: number;
  openBatches: number;
}

export interface PlantProtocols {
  plantId: string;
  code: string;
  scientificName: string;
  vernacularName: string;
  protocols: ProtocolRow[];
}

export interface ProtocolList extends Page<PlantProtocols> {
  /** Reference protocols of the nursery's plants that are not there yet; only an owner is told. */
  missingReference: number;
}

export interface ProtocolStageRow extends StageDetail {
  position: number;
  light: StageLight;
  containerName: string | null;
}

export interface ProtocolContainer {
  id: string;
  name: string;
}

/** All that one version says. */
export interface ProtocolVersionPage {
  versionId: string;
  number: number;
  madeOn: string;
  /** Null where the reference data said it. */
  personName: string | null;
  standing: Standing;
  source: string | null;
  changeNote: string;
  startUnit: BatchUnit;
  startContainer: ProtocolContainer | null;
  targetContainer: ProtocolContainer | null;
  seedsPerCell: number | null;
  stages: ProtocolStageRow[];
  texts: Record<ProtocolText, string>;
}

export interface ProtocolVersionRow {
  versionId: string;
  number: number;
  madeOn: string;
  personName: string | null;
  changeNote: string;
  /** Batches started under it, and how many of them are open. */
  batches: number;
  openBatches: number;
}

/** A batch that was started under some version of the protocol. */
export interface ProtocolBatchRow {
  batchId: string;
  code: string;
  versionNumber: number;
  startedOn: string;
  closedOn: string | null;
  startedUnits: number;
  unit: BatchUnit;
  /** Plants alive at the last count. */
  emergedUnits: number | null;
}

export interface ProtocolPage {
  protocolId: string;
  plant: { plantId: string; code: string; scientificName: string; vernacularName: string; dormantMonths: number[] };
  method: PropagationMethod;
  label: string;
  isRetired: boolean;
  currentVersionId: string;
  /** The version asked for. */
  version: ProtocolVersionPage;
  /** The one it was written after. */
  before: ProtocolVersionPage | null;
  /** The newest first. */
  versions: ProtocolVersionRow[];
  /** The newest first, at most fifty. */
  batches: ProtocolBatchRow[];
}
