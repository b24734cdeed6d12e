import type { StageDetail } from './detail.ts';
import { STAGE_KINDS, type StageKind } from './stages.ts';

/** What of a stage can differ between two versions. */
export const STAGE_PARTS = [
  'days',
  'share',
  'season',
  'rests',
  'temperature',
  'light',
  'depth',
  'medium',
  'container',
  'note',
  'duration-standing',
  'share-standing',
] as const;
export type StagePart = (typeof STAGE_PARTS)[number];

/** One stage that one version has and the other has not, or has otherwise. */
export interface StageDifference<Stage extends StageDetail = StageDetail> {
  kind: StageKind;
  before: Stage | null;
  after: Stage | null;
  /** Empty where the stage was added or taken out. */
  parts: StagePart[];
}

const valueOf: Record<StagePart, (stage: StageDetail) => unknown> = {
  days: (stage) => [stage.shortDays, stage.usualDays, stage.longDays],
  share: (stage) => stage.share,
  season: (stage) => [stage.season?.fromMd ?? null, stage.season?.toMd ?? null],
  rests: (stage) => stage.rests,
  temperature: (stage) => [stage.temperatureLowC, stage.temperatureHighC],
  light: (stage) => stage.light,
  depth: (stage) => stage.depthMm,
  medium: (stage) => stage.medium,
  container: (stage) => stage.containerId,
  note: (stage) => stage.note,
  'duration-standing': (stage) => [stage.durationStanding, stage.durationSource],
  'share-standing': (stage) => [stage.shareStanding, stage.shareSource],
};

/** What two versions of a protocol say differently, in the order of stages. A stage is the same stage when it is of the same kind. */
export function stageDifferences<Stage extends StageDetail>(
  before: readonly Stage[],
  after: readonly Stage[],
): StageDifference<Stage>[] {
  return STAGE_KINDS.flatMap((kind): StageDifference<Stage>[] => {
    const was = before.find((stage) => stage.kind === kind) ?? null;
    const is = after.find((stage) => stage.kind === kind) ?? null;
    if (was === null && is === null) return [];
    if (was === null || is === null) return [{ kind, before: was, after: is, parts: [] }];
    const parts = STAGE_PARTS.filter(
      (part) => JSON.stringify(valueOf[part](was)) !== JSON.stringify(valueOf[part](is)),
    );
    return parts.length === 0 ? [] : [{ kind, before: was, after: is, parts }];
  });
}
