import type { Standing } from '../../kernel/standings.ts';
import type { StagePlan } from './stages.ts';

/** How light a stage wants it; '' where nobody has said. `surface-light` is seed that must not be covered. */
export const STAGE_LIGHTS = ['', 'dark', 'surface-light', 'shade', 'full-light'] as const;
export type StageLight = (typeof STAGE_LIGHTS)[number];

/** A stage with its conditions and the word each figure rests on. Degrees Celsius, millimetres. */
export interface StageDetail extends StagePlan {
  durationStanding: Standing;
  durationSource: string | null;
  shareStanding: Standing;
  shareSource: string | null;
  temperatureLowC: number | null;
  temperatureHighC: number | null;
  light: string;
  depthMm: number | null;
  medium: string;
  containerId: string | null;
  note: string;
}

/** Standings that somebody else can look up, so that they are nothing without a source. */
const PUBLISHED: readonly Standing[] = ['confirmed', 'confirmed-vendor', 'derived'];
export const needsSource = (standing: Standing): boolean => PUBLISHED.includes(standing);
