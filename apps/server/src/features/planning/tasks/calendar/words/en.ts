import type { StageKind } from '@rootclock/domain';
import type { CalendarWords } from './words.ts';

const STAGES: Record<StageKind, string> = {
  scarification: 'scarification',
  stratification: 'the cold and moist time',
  sowing: 'sowing',
  sticking: 'sticking',
  emergence: 'coming up',
  rooting: 'rooting',
  'pricking-out': 'pricking out',
  'growing-on': 'growing on',
  hardening: 'hardening',
  'root-check': 'the root-ball check',
  ready: 'ready',
};
const plants = (units: number | null) => (units === 1 ? '1 plant' : `${units ?? 0} plants`);
const outOfPots = (units: number | null, code: string) =>
  units === 1 ? `1 plant of ${code} must be out of its pot` : `${plants(units)} of ${code} must be out of their pots`;

export const en: CalendarWords = {
  calendarName: (nursery) => `${nursery}: tasks`,
  title: {
    pull: ({ units, subject }) => `Pull ${plants(units)} for ${subject.code}`,
    'plant-out': ({ units, subject }) => `Plant ${plants(units)} of ${subject.code}`,
    'hand-over': ({ units, subject }) => `Hand over ${plants(units)} of ${subject.code}`,
    'stage-late': ({ subject, details }) =>
      `Look at ${subject.code}: ${details.stage ? STAGES[details.stage] : 'its stage'} takes longer than it should`,
    'ask-not-yet-up': ({ units, subject }) => `Look for ${plants(units)} of ${subject.code} that were not up yet`,
    'take-out-of-cold': ({ subject, details }) =>
      details.next === 'sowing'
        ? `Take ${subject.code} out of the cold and sow it`
        : `Take ${subject.code} out of the cold`,
    sow: ({ subject }) => `Sow ${subject.code}`,
    stick: ({ subject }) => `Stick ${subject.code}`,
    count: ({ subject, details }) =>
      details.stage === 'rooting'
        ? `Count what has rooted of ${subject.code}`
        : `Count what has come up of ${subject.code}`,
    'prick-out': ({ subject }) => `Prick out ${subject.code}`,
    pot: ({ subject }) => `Pot ${subject.code}`,
    harden: ({ subject }) => `Harden ${subject.code} off`,
    'check-root-ball': ({ subject }) => `Check the root balls of ${subject.code}`,
    'leave-the-pot': ({ units, unit, subject }) =>
      unit === 'plant' ? outOfPots(units, subject.code) : `${subject.code} must be out of its cells`,
    cover: ({ subject }) => `Cover ${subject.code} for winter`,
    'vole-bait': ({ subject }) => `Bait against voles at ${subject.code}`,
    uncover: ({ subject }) => `Uncover ${subject.code}`,
    'follow-up': ({ subject }) => `See how the plants of ${subject.code} are doing`,
    'test-to-repeat': ({ subject }) => `Repeat the viability test of ${subject.code}`,
  },
  late: (day) => `Late after ${day}.`,
  dormant: (names) =>
    `Put off until the last of them comes up: ${names.join(', ')} may look dead before and only be dormant.`,
  voleBait:
    'Bait is poison: the label is the law. Licensed practice only, in closed bait stations, out of reach of pets, livestock and wildlife. Follow local codes.',
};
