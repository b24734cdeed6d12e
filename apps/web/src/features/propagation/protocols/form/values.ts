import { propagation as contracts } from '@rootclock/contracts';
import {
  type BatchUnit,
  type PropagationMethod,
  STAGE_KINDS,
  type StageKind,
  type StageLight,
  stagesForMethod,
  type Standing,
  UNITS_FOR_METHOD,
} from '@rootclock/domain';
import type { PickedContainer } from '../../../plants/container-picker.tsx';
import type { PickedPlant } from '../../../plants/plant-picker.tsx';
import { shownDegrees, shownDepth, type Shown } from './shown.ts';

/** A stage as it is typed: shares in per cent, degrees and depths in the nursery's units. */
export interface StageValues {
  kind: StageKind;
  shortDays: number | null;
  usualDays: number | null;
  longDays: number | null;
  durationStanding: Standing;
  durationSource: string;
  percent: number | null;
  shareStanding: Standing;
  shareSource: string;
  seasonFrom: string;
  seasonTo: string;
  rests: boolean;
  low: Shown;
  high: Shown;
  depth: Shown;
  light: StageLight;
  medium: string;
  container: PickedContainer | null;
  note: string;
}

export interface ProtocolValues {
  plantId: PickedPlant | null;
  method: PropagationMethod;
  label: string;
  startUnit: BatchUnit;
  startContainerId: PickedContainer | null;
  targetContainerId: PickedContainer | null;
  seedsPerCell: number | null;
  stages: StageValues[];
  texts: Record<contracts.ProtocolText, string>;
  changeNote: string;
}

const NOTHING: Shown = { shown: null, stored: null };
/** Done in a moment, so that a length is the exception. */
const MOMENTS: readonly StageKind[] = ['scarification', 'sowing', 'sticking', 'pricking-out', 'root-check', 'ready'];
const USUAL: Record<PropagationMethod, readonly StageKind[]> = {
  seed: ['stratification', 'sowing', 'emergence', 'growing-on', 'hardening', 'root-check', 'ready'],
  cutting: ['sticking', 'rooting', 'growing-on', 'hardening', 'root-check', 'ready'],
  'root-cutting': ['sticking', 'emergence', 'growing-on', 'hardening', 'root-check', 'ready'],
  division: ['sticking', 'rooting', 'growing-on', 'root-check', 'ready'],
};

export function emptyStage(kind: StageKind): StageValues {
  const days = MOMENTS.includes(kind) ? 0 : null;
  return {
    kind,
    shortDays: days,
    usualDays: days,
    longDays: days,
    durationStanding: 'own setting',
    durationSource: '',
    percent: MOMENTS.includes(kind) ? 100 : null,
    shareStanding: 'own setting',
    shareSource: '',
    seasonFrom: '',
    seasonTo: '',
    rests: kind === 'growing-on',
    low: NOTHING,
    high: NOTHING,
    depth: NOTHING,
    light: '',
    medium: '',
    container: null,
    note: '',
  };
}

const NO_TEXTS = Object.fromEntries(contracts.PROTOCOL_TEXTS.map((field) => [field, ''])) as ProtocolValues['texts'];

export const methodValues = (
  method: PropagationMethod,
): Pick<ProtocolValues, 'method' | 'startUnit' | 'startContainerId' | 'seedsPerCell' | 'stages'> => ({
  method,
  startUnit: UNITS_FOR_METHOD[method][0] ?? 'cell',
  startContainerId: null,
  seedsPerCell: null,
  stages: USUAL[method].map(emptyStage),
});

export const emptyValues = (plant: PickedPlant | null): ProtocolValues => ({
  plantId: plant,
  label: '',
  targetContainerId: null,
  texts: NO_TEXTS,
  changeNote: '',
  ...methodValues('seed'),
});

function stageValues(stage: contracts.ProtocolStageRow, isUs: boolean): StageValues {
  const { kind, shortDays, usualDays, longDays, durationStanding, shareStanding, rests, light, medium, note } = stage;
  return {
    kind,
    shortDays,
    usualDays,
    longDays,
    durationStanding,
    durationSource: stage.durationSource ?? '',
    percent: Number((stage.share * 100).toFixed(4)),
    shareStanding,
    shareSource: stage.shareSource ?? '',
    seasonFrom: stage.season?.fromMd ?? '',
    seasonTo: stage.season?.toMd ?? '',
    rests,
    light,
    medium,
    note,
    low: shownDegrees(stage.temperatureLowC, isUs),
    high: shownDegrees(stage.temperatureHighC, isUs),
    depth: shownDepth(stage.depthMm, isUs),
    container: stage.containerId === null ? null : { id: stage.containerId, name: stage.containerName ?? '' },
  };
}

/** What a version says, as it is typed. */
export const versionValues = (version: contracts.ProtocolVersionPage, isUs: boolean) => ({
  startUnit: version.startUnit,
  startContainerId: version.startContainer,
  targetContainerId: version.targetContainer,
  seedsPerCell: version.seedsPerCell,
  texts: version.texts,
  stages: version.stages.map((stage) => stageValues(stage, isUs)),
});

/** What is taken over from another plant is an assumption, whatever it rests on there. */
export const assumedStages = (stages: readonly StageValues[]): StageValues[] =>
  stages.map((stage) => ({
    ...stage,
    durationStanding: 'assumed',
    durationSource: '',
    shareStanding: 'assumed',
    shareSource: '',
  }));

/** A figure that somebody changes is the nursery's own, unless it is said at once what it rests on. */
export function changedStage(stage: StageValues, part: Partial<StageValues>): StageValues {
  const own = { standing: 'own setting', source: '' } as const;
  const isLength = 'shortDays' in part || 'usualDays' in part || 'longDays' in part;
  return {
    ...stage,
    ...(isLength ? { durationStanding: own.standing, durationSource: own.source } : {}),
    ...('percent' in part ? { shareStanding: own.standing, shareSource: own.source } : {}),
    ...part,
  };
}

/** Puts a stage where its kind belongs. */
export const withStage = (stages: readonly StageValues[], kind: StageKind): StageValues[] =>
  [...stages, emptyStage(kind)].sort((a, b) => STAGE_KINDS.indexOf(a.kind) - STAGE_KINDS.indexOf(b.kind));

export const missingKinds = (method: PropagationMethod, stages: readonly StageValues[]): StageKind[] =>
  stagesForMethod(method).filter((kind) => !stages.some((stage) => stage.kind === kind));
