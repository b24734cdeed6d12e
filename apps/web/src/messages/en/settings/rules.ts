import type { PotLifeBasis } from '@rootclock/domain';
import { plural } from '../words.ts';

/** Parts of an ISO 8601 span in words: "1 year 6 months". */
const span = ({ years, months, weeks, days }: { years: number; months: number; weeks: number; days: number }): string =>
  [
    years > 0 ? plural(years, { one: '# year', other: '# years' }) : '',
    months > 0 ? plural(months, { one: '# month', other: '# months' }) : '',
    weeks > 0 ? plural(weeks, { one: '# week', other: '# weeks' }) : '',
    days > 0 ? plural(days, { one: '# day', other: '# days' }) : '',
  ]
    .filter((part) => part !== '')
    .join(' ');

const sentences: Record<PotLifeBasis, (span: string) => string> = {
  confined: (limit) => `Out within ${limit} of its roots first being confined in a cell or pot.`,
  container: (limit) => `Out within ${limit} of coming into this container.`,
  'no-winter': () => 'Out before the freeze day, unless it stands under winter cover.',
};

/** Pot-life rules, planting windows and the freeze day. */
export const rules = {
  span,
  sentences,
  short: {
    confined: (limit: string) => `${limit} confined`,
    container: (limit: string) => `${limit} in it`,
    'no-winter': () => 'not through winter',
  } satisfies Record<PotLifeBasis, (span: string) => string>,
  carry: (maxDays: number, graceDays: number) =>
    `If it is dormant by then and planting begins again within ${maxDays} days, it may wait until ${graceDays} days into that window, after a look at its roots.`,
  title: 'Pot-life rules',
  lead: 'They say how long plants may stay in pots. Of several rules the one that reaches a lot most particularly counts, and the earliest day binds.',
  noSource:
    'No limit by container was found in print for herbs: those marked assumed are only there until you write better ones.',
  add: 'Add a rule',
  general: 'Whatever the container',
  byContainer: 'By container',
  rulesCount: (count: number) => plural(count, { one: '# rule', other: '# rules' }),
  binds: (count: number) =>
    plural(count, { zero: 'binds nothing now', one: 'binds # lot or batch', other: 'binds # lots and batches' }),
  change: 'Change',
  changeRule: (who: string) => `Change: ${who}`,
  retire: 'Retire',
  retired: 'The rule is retired.',
  saved: 'The rule is saved.',
  who: {
    lot: (code: string) => `Lot ${code}`,
    plant: (name: string) => name,
    genus: (genus: string) => `All of ${genus}`,
    rootHabit: (habit: string) => `Plants with ${habit}`,
    inContainer: (who: string, container: string) => `${who}, in: ${container}`,
  },
  all: 'All rules',
  filterHabit: 'Roots',
  filterText: 'Container, plant or genus',
  emptyTitle: 'No rules yet',
  emptyText: 'Without rules no lot has a plant-by day.',
  noMatchTitle: 'No rule matches',
  form: {
    addTitle: 'Add a rule',
    lotTitle: 'A rule for one lot',
    lotReach: 'It reaches this lot alone, and goes before every other rule with the same start.',
    basis: 'What it counts from',
    bases: {
      confined: 'since roots were first confined',
      container: 'since it came into this container',
      'no-winter': 'may not stand through winter',
    } satisfies Record<PotLifeBasis, string>,
    basisHints: {
      confined: 'The clock of taproots. Potting up does not stop it.',
      container: 'Potting up starts it anew.',
      'no-winter': 'Its limit is the freeze day.',
    } satisfies Record<PotLifeBasis, string>,
    reach: 'Whom it reaches',
    reaches: { rootHabit: 'one kind of roots', genus: 'a genus', plant: 'one plant' },
    container: 'Only in this container',
    anyContainer: 'Left empty, it counts in all of them.',
    genus: 'Genus',
    amount: 'How long',
    unit: 'Unit',
    units: { Y: 'years', M: 'months', W: 'weeks', D: 'days' },
    mayCarry: 'May be carried over winter while dormant',
    maxDays: 'Most days from the limit to the next window',
    graceDays: 'Days into that window',
    note: 'Note',
    save: 'Save the rule',
    reachesContainer: 'A rule for a genus counts in every container.',
  },
  preview: {
    title: 'What this would change',
    none: (open: number) =>
      plural(open, {
        zero: 'Nothing stands in pots yet.',
        one: 'The plant-by day of the one lot here would stay.',
        other: 'The plant-by days of all # lots and batches would stay.',
      }),
    earlier: (count: number) => plural(count, { one: '# would be due earlier', other: '# would be due earlier' }),
    later: (count: number) => plural(count, { one: '# would be due later', other: '# would be due later' }),
    nowPast: (count: number) =>
      plural(count, {
        one: '# of them would be past its day at once',
        other: '# of them would be past their day at once',
      }),
    of: (open: number) => plural(open, { one: 'of # lot or batch', other: 'of # lots and batches' }),
    examples: 'For instance',
    move: (from: string, to: string) => `${from} → ${to}`,
    noDay: 'no day',
  },
  windows: {
    title: 'Planting windows',
    lead: 'Days of the year on which plants go out. A plant-by day is pulled back to the last of them.',
    strip: 'The planting windows in the year',
    all: 'all plants',
    upTo: (volume: string) => `containers up to ${volume}`,
    inRegion: (region: string) => `sites in ${region}`,
    range: (opens: string, closes: string) => `${opens} to ${closes}`,
    wraps: 'over the year’s end',
    today: 'today',
    freeze: 'freeze day',
    add: 'Add a window',
    editTitle: 'Change the window',
    change: 'Change',
    changeNamed: (range: string) => `Change: ${range}`,
    retire: 'Retire',
    opens: 'Opens',
    closes: 'Closes',
    maxContainerMl: 'Only for containers up to',
    region: 'Only for sites in',
    anyRegion: 'all regions',
    note: 'Note',
    save: 'Save the window',
    saved: 'The window is saved.',
    retired: 'The window is retired.',
    emptyTitle: 'No planting windows yet',
    emptyText: 'Without windows plants may go out on any day, and each limit counts as it stands.',
    freezeTitle: 'Freeze day',
    freezeLead: 'What may not stand through winter must be out by this day.',
    freezeDay: 'Ground freezes about',
    freezeSave: 'Save the freeze day',
    freezeSaved: 'The freeze day is saved.',
  },
};
