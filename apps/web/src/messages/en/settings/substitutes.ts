import type { BedSun, HabitTrait, HeightClass, SubstitutionKind } from '@rootclock/domain';
import { plural } from '../words.ts';

/** Rules by which one plant may stand in for another, and what they offer while a line is typed. */
export const substitutes = {
  title: 'What may stand in',
  lead: 'When a line is typed, these rules offer what could stand in for its plant. You decide which of it the client accepts. Of several rules of a kind the most particular counts.',
  add: 'Add a rule',
  change: 'Change',
  changeRule: (rule: string) => `Change: ${rule}`,
  emptyTitle: 'No rules yet',
  emptyText: 'Without rules every alternative is typed by hand.',
  who: { all: 'All plants', genus: (genus: string) => `All of ${genus}`, plant: (name: string) => name },
  kinds: {
    'another-size': 'another size',
    'same-genus': 'another native of the genus',
    'same-habit': 'same height, light and season',
  } satisfies Record<SubstitutionKind, string>,
  sentences: {
    'another-size': 'The same plant in another pot may stand in.',
    'same-genus': 'Another plant of the genus in the same pot may stand in, if it is native to the region of the site.',
    'same-habit':
      'Another plant in the same pot may stand in, if it is of the same height class, stands in the same light and blooms in at least half of the same months.',
  } satisfies Record<SubstitutionKind, string>,
  penalty: (penalty: number) => `Penalty ${penalty}`,
  reaches: (plants: number) =>
    plural(plants, { zero: 'Reaches no plant now.', one: 'Reaches # plant.', other: 'Reaches # plants.' }),
  untoldPlants: (count: number) =>
    plural(count, {
      zero: '',
      one: 'It says nothing of # of them, whose height, light or bloom is not told on its page.',
      other: 'It says nothing of # of them, whose height, light or bloom is not told on their pages.',
    }),
  saved: 'The rule is saved.',
  retired: 'The rule is retired. What lines took by it stays theirs.',
  retire: 'Retire',
  form: {
    addTitle: 'Add a rule',
    kind: 'What may stand in',
    reach: 'For whom',
    reachWords: { all: 'all plants', genus: 'a genus', plant: 'one plant' },
    genus: 'Genus',
    penalty: 'Penalty',
    penaltyHint: '1 to 100. Where several things could stand in, the smaller penalty goes first.',
    note: 'Note',
    save: 'Save the rule',
  },
  offer: {
    title: 'By your rules',
    found: (count: number) =>
      plural(count, {
        zero: 'Nothing more could stand in by your rules.',
        one: '# thing could stand in by your rules.',
        other: '# things could stand in by your rules.',
      }),
    taken: (count: number) =>
      plural(count, { zero: '', one: 'This line takes # already.', other: 'This line takes # already.' }),
    which: 'Which, and why',
    whyNone: 'What was not offered, and why',
    take: 'Take',
    takeOne: (plant: string, container: string) => `Take ${plant}, ${container}`,
    takeAll: (count: number) => plural(count, { one: 'Take it', other: 'Take all #' }),
    because: {
      'another-size': () => 'The same plant in another pot.',
      'same-genus': (genus: string) => `Another ${genus}.`,
    },
    habit: (height: string, lights: string, months: string) =>
      `As ${height}, for the same light (${lights}), in bloom with it in ${months}.`,
    heights: { low: 'low', medium: 'middling in height', tall: 'tall', 'very-tall': 'very tall' } satisfies Record<
      HeightClass,
      string
    >,
    lights: { 'full-sun': 'full sun', 'part-sun': 'part sun', shade: 'shade' } satisfies Record<BedSun, string>,
    native: (region: string) => `Native to ${region}.`,
    notNative: (region: string) => `Not known to be native to ${region}.`,
    standing: (onHand: number, growing: number) =>
      [
        onHand > 0 ? plural(onHand, { one: '# on hand', other: '# on hand' }) : '',
        growing > 0 ? plural(growing, { one: '# growing', other: '# growing' }) : '',
      ]
        .filter(Boolean)
        .join(', '),
    noRegion:
      'Other plants of the genus are not offered: no site with a region is chosen, so nobody can say what is native there.',
    traits: { height: 'height', light: 'light', bloom: 'months of bloom' } satisfies Record<HabitTrait, string>,
    untoldTraits: (traits: string) =>
      `Plants of the same habit are not offered: this plant’s page does not tell its ${traits}, or not in words that can be read.`,
    leftOut: (region: string | null) =>
      region === null
        ? 'Left out, since the site names no region:'
        : `Left out, since not known to be native to ${region}:`,
    passedOver: 'Passed over, since their pages do not tell height, light or bloom:',
    full: 'A line takes 20 alternatives at most. Remove one to take another.',
  },
};
