import type { BeginningBasis, StageKind, StageState } from '@rootclock/domain';
import { plural } from '../words.ts';

const names: Record<StageKind, string> = {
  scarification: 'Scarification',
  stratification: 'Cold, moist stratification',
  sowing: 'Sowing',
  sticking: 'Sticking',
  emergence: 'Emergence',
  rooting: 'Rooting',
  'pricking-out': 'Pricking out',
  'growing-on': 'Growing on',
  hardening: 'Hardening',
  'root-check': 'Root-ball check',
  ready: 'Ready',
};
const days = (count: number): string => plural(count, { one: '# day', other: '# days' });

export const stages = {
  names,
  title: 'Stages',
  protocol: (label: string, version: number) => `${label || 'Usual protocol'}, version ${version}`,
  olderVersion: 'There is a newer version; this batch keeps the one it was started under.',
  states: { done: 'done', current: 'now', late: 'too long', coming: 'to come' } satisfies Record<StageState, string>,
  begun: (on: string) => `began ${on}`,
  basis: {
    start: 'with the start',
    said: null,
    count: 'with the first count',
    potting: 'with the first potting',
    act: 'with the step before it',
  } satisfies Record<BeginningBasis, string | null>,
  passedOver: 'no day noted',
  shouldBegin: (on: string, from: string) => `should begin ${on}, ${from}`,
  shouldHave: (on: string) => `should have begun ${on}`,
  due: (on: string, from: string) => `next step due ${on}, ${from}`,
  lateSince: (stage: string, count: number) =>
    `${stage} has gone on ${days(count)} longer than nine batches of ten take.`,
  lateHint: 'Begin the next stage, keep the batch for a second winter, or close it.',
  takes: (least: number, usual: number, most: number) =>
    most === 0
      ? 'takes no time'
      : least === most
        ? `takes ${days(most)}`
        : `takes ${least} to ${days(most)}, usually ${usual}`,
  beginToday: (stage: string) => `${stage}: begin today`,
  beginOther: 'Begin a stage on another day',
  beginTitle: 'Begin a stage',
  beginWhich: 'Stage',
  beginHint: 'Earlier stages without a day count as done. Saying it again sets the day right.',
  beginSave: 'Begin the stage',
  began: (stage: string) => `${stage} has begun.`,
  none: 'It was started without a protocol, so it has no stages.',
  temperature: (low: string | null, high: string | null) =>
    low === null ? `up to ${high}` : high === null || low === high ? `at ${low}` : `${low} to ${high}`,
};
