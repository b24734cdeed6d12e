import type { StageKind, StagePlan } from '@rootclock/domain';
import type { Fact, Range } from '../fact.ts';
import type { ReferenceStage } from './shape.ts';

/*
 * Figures nobody has published for the plant in hand are assumed, and say so: they exist to make a first schedule possible, and the
 * nursery's own record takes their place.
 */

type Days = readonly [short: number, usual: number, long: number];

/** A stage whose length and share are both assumed. */
export function assumedStage(
  kind: StageKind,
  [shortDays, usualDays, longDays]: Days,
  share: number,
  more: Partial<ReferenceStage> = {},
): ReferenceStage {
  return {
    kind,
    shortDays,
    usualDays,
    longDays,
    durationStanding: 'assumed',
    durationSource: null,
    share,
    shareStanding: 'assumed',
    shareSource: null,
    season: null,
    rests: false,
    temperatureLowC: null,
    temperatureHighC: null,
    light: '',
    depthMm: null,
    medium: '',
    containerCode: null,
    note: '',
    ...more,
  };
}

/** A length printed as one figure or as two; of two the middle counts as usual. */
export function printedDays({
  value: [low, high],
  standing,
  source,
  note,
}: Fact<Range>): Pick<
  ReferenceStage,
  'shortDays' | 'usualDays' | 'longDays' | 'durationStanding' | 'durationSource'
> & { note: string } {
  const middle = low === high ? '' : `Printed as ${low} to ${high} days; the middle counts as usual.`;
  return {
    shortDays: low,
    usualDays: Math.round((low + high) / 2),
    longDays: high,
    durationStanding: standing,
    durationSource: source,
    note: [middle, sentence(note)].filter(Boolean).join(' '),
  };
}

/** A share printed in per cent, as one figure or as two; of two the middle is reckoned with. */
export function printedShare({
  value: [low, high],
  standing,
  source,
}: Fact<Range>): Pick<ReferenceStage, 'share' | 'shareStanding' | 'shareSource'> {
  const range = low === high ? '' : `; printed as ${low} to ${high} percent, the middle taken`;
  return {
    share: Math.round((low + high) * 50) / 10_000,
    shareStanding: standing,
    shareSource: source === null ? null : `${source}${range}`,
  };
}

export const sentence = (text: string | undefined | null): string => {
  const trimmed = text?.trim() ?? '';
  return trimmed === '' ? '' : `${trimmed[0]?.toUpperCase()}${trimmed.slice(1)}${/[.!?]$/.test(trimmed) ? '' : '.'}`;
};

/** What all plants go through once they stand in cells or pots. */
export const lastStages = (growing: ReferenceStage): readonly ReferenceStage[] => [
  growing,
  assumedStage('hardening', [7, 10, 21], 0.98, {
    light: 'full-light',
    durationStanding: 'common practice',
    note: 'Outdoors by day first, out of the wind; drier, without feed.',
  }),
  assumedStage('root-check', [0, 0, 14], 0.97, {
    note: 'Lift a few plugs: the root ball must hold when it is drawn. What does not hold grows on.',
  }),
  assumedStage('ready', [0, 0, 0], 1),
];

/** Stages with what is known more particularly of some of them. */
export const withParticulars = (
  stages: readonly ReferenceStage[],
  particulars: Partial<Record<StagePlan['kind'], Partial<ReferenceStage>>> = {},
): ReferenceStage[] => stages.map((stage) => ({ ...stage, ...particulars[stage.kind] }));
