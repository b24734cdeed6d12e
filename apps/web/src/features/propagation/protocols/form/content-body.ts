import type { ProtocolValues, StageValues } from './values.ts';
import { storedDegrees, storedDepth } from './shown.ts';

const stageBody = (stage: StageValues, isUs: boolean) => ({
  kind: stage.kind,
  shortDays: stage.shortDays,
  usualDays: stage.usualDays,
  longDays: stage.longDays,
  durationStanding: stage.durationStanding,
  durationSource: stage.durationSource,
  share: stage.percent === null ? null : stage.percent / 100,
  shareStanding: stage.shareStanding,
  shareSource: stage.shareSource,
  // Half a season is none: the contract asks for the other half.
  season: stage.seasonFrom === '' && stage.seasonTo === '' ? null : { fromMd: stage.seasonFrom, toMd: stage.seasonTo },
  rests: stage.rests,
  temperatureLowC: storedDegrees(stage.low, isUs),
  temperatureHighC: storedDegrees(stage.high, isUs),
  light: stage.light,
  depthMm: storedDepth(stage.depth, isUs),
  medium: stage.medium,
  containerId: stage.container?.id ?? null,
  note: stage.note,
});

/** What a version says, as it is sent; it may still be incomplete. */
export const contentBody = (values: ProtocolValues, isUs: boolean) => ({
  startUnit: values.startUnit,
  startContainerId: values.startContainerId?.id ?? null,
  targetContainerId: values.targetContainerId?.id ?? null,
  seedsPerCell: values.method === 'seed' && values.startUnit === 'cell' ? values.seedsPerCell : null,
  stages: values.stages.map((stage) => stageBody(stage, isUs)),
  texts: values.texts,
});
