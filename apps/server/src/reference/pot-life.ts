import { ROOT_HABITS, type PotLifeBasis, type RootHabit, type Standing, type WinterCarry } from '@rootclock/domain';
import { type Fact, type Range, assumed, confirmed, ownSetting, practice } from './fact.ts';

/** Whom a rule reaches: a genus, a root habit, or a root habit in a container, which gets its id when the rows are copied. */
export interface ReferenceReach {
  readonly genus?: string;
  readonly rootHabit?: RootHabit;
  readonly containerCode?: string;
}

export interface ReferenceRule {
  readonly code: string;
  readonly basis: PotLifeBasis;
  /** ISO 8601; null for a no-winter rule, whose limit is the freeze day. */
  readonly span: string | null;
  readonly reach: ReferenceReach;
  readonly winterCarry: WinterCarry | null;
  readonly standing: Standing;
  readonly source: string | null;
  readonly note: string;
}

/** One year confined, the only limit growers agree on. It pulls back to the last window: no winter carry. */
const oneYearConfined = (code: string, reach: ReferenceReach, note: string): ReferenceRule => {
  const { value, standing, source } = practice('P1Y');
  return { code, basis: 'confined', span: value, reach, winterCarry: null, standing, source, note };
};

const NO_PUBLISHED_LIMIT = 'no published limit was found for forbs; set your own';
/** A plug that stood dormant through winter may go out in the first three weeks of spring, after a look at its roots. */
const CARRY: WinterCarry = { maxDays: 150, graceDays: 21 };

const HERBS = ['fibrous', 'rhizome', 'tuber'] as const satisfies readonly RootHabit[];
const BUT_TAPROOTS = [...HERBS, 'woody'] as const satisfies readonly RootHabit[];
const ANY_HABIT: readonly RootHabit[] = ROOT_HABITS;

/** One limit for several root habits: a rule reaches one habit in one container, so each gets its own row. */
function containerLimit(
  containerCode: string,
  habits: readonly RootHabit[],
  span: string,
  winterCarry: WinterCarry | null,
  note = NO_PUBLISHED_LIMIT,
): ReferenceRule[] {
  const { value, standing, source } = assumed(span);
  return habits.map((rootHabit) => {
    const reach: ReferenceReach = { rootHabit, containerCode };
    return {
      code: `${containerCode}-${rootHabit}`,
      basis: 'container',
      span: value,
      reach,
      winterCarry,
      standing,
      source,
      note,
    };
  });
}

function noWinter(containerCode: string): ReferenceRule[] {
  const { standing, source } = assumed(null);
  const note = 'small plugs freeze through in the open; places with winter cover are exempt';
  return ANY_HABIT.map((rootHabit) => {
    const reach: ReferenceReach = { rootHabit, containerCode };
    return {
      code: `no-winter-${containerCode}-${rootHabit}`,
      basis: 'no-winter',
      span: null,
      reach,
      winterCarry: null,
      standing,
      source,
      note,
    };
  });
}

/**
 * The rules a nursery begins with. Only the two one-year limits are common practice; every limit by container is an
 * assumption that keeps the board alive until the grower writes a better one. Taproots have none in the larger sizes,
 * where their year comes first.
 */
export const referenceRules: readonly ReferenceRule[] = [
  oneYearConfined(
    'milkweed-one-year',
    { genus: 'Asclepias' },
    'milkweeds leave the pot within one year, later they decline; the rule reaches the genus, though not every milkweed has a taproot',
  ),
  oneYearConfined(
    'taproot-one-year',
    { rootHabit: 'taproot' },
    'taproot plants leave the pot within one year, later they decline',
  ),
  ...containerLimit('bare-root', ANY_HABIT, 'P42D', null, 'kept cool and damp; set your own'),
  ...containerLimit('plug-288', ANY_HABIT, 'P90D', null),
  ...containerLimit('plug-200', ANY_HABIT, 'P100D', null),
  ...containerLimit('plug-128', ANY_HABIT, 'P120D', null),
  ...containerLimit('plug-72', ANY_HABIT, 'P240D', CARRY),
  ...containerLimit('plug-50', BUT_TAPROOTS, 'P300D', CARRY),
  ...containerLimit('plug-50-deep', BUT_TAPROOTS, 'P1Y', CARRY),
  ...containerLimit('plug-38-deep', BUT_TAPROOTS, 'P1Y', CARRY),
  ...containerLimit('cone-164', ['fibrous', 'rhizome', 'woody'], 'P18M', CARRY),
  ...containerLimit(
    'cone-164',
    ['tuber'],
    'P300D',
    CARRY,
    'one protocol finds Liatris aspera poor in deep narrow cells; set your own',
  ),
  ...containerLimit('pot-7cm', BUT_TAPROOTS, 'P300D', CARRY),
  ...containerLimit('pot-9cm', HERBS, 'P1Y', CARRY),
  ...containerLimit('pot-9cm', ['woody'], 'P300D', CARRY, 'woody roots circle in a shallow pot; set your own'),
  ...containerLimit('band-14cm', BUT_TAPROOTS, 'P18M', CARRY),
  ...containerLimit('band-23cm', BUT_TAPROOTS, 'P2Y', CARRY),
  ...containerLimit('pot-1l', BUT_TAPROOTS, 'P18M', CARRY),
  ...containerLimit('tall-1l', BUT_TAPROOTS, 'P2Y', CARRY),
  ...containerLimit('pot-2l', BUT_TAPROOTS, 'P2Y', CARRY),
  ...containerLimit('class-1', BUT_TAPROOTS, 'P2Y', CARRY),
  ...containerLimit('class-2', BUT_TAPROOTS, 'P3Y', CARRY),
  ...containerLimit('class-3', BUT_TAPROOTS, 'P3Y', CARRY),
  ...containerLimit('class-5', BUT_TAPROOTS, 'P3Y', CARRY),
  ...noWinter('plug-288'),
  ...noWinter('plug-200'),
  ...noWinter('plug-128'),
];

export interface ReferenceWindow {
  readonly code: string;
  readonly opensMd: string;
  readonly closesMd: string;
  /** For plants in containers of at most so many millilitres; null for all. */
  readonly maxContainerMl: number | null;
  readonly region: string | null;
  readonly standing: Standing;
  readonly source: string | null;
  readonly note: string;
}

const SMALL_PLUG_ML = 60;

function plantingWindow(
  code: string,
  opensMd: string,
  closesMd: string,
  maxContainerMl: number | null,
  said: Fact<string>,
): ReferenceWindow {
  return {
    code,
    opensMd,
    closesMd,
    maxContainerMl,
    region: null,
    standing: said.standing,
    source: said.source,
    note: said.value,
  };
}

/**
 * Planting windows of the Upper Midwest. Windows of one container limit add up and cut the wider ones, which is why small
 * plugs are given the spring as well as their shorter autumn.
 */
export const referenceWindows: readonly ReferenceWindow[] = [
  plantingWindow(
    'spring',
    '04-15',
    '06-15',
    null,
    practice('after the ground thaws, before the heat; the days are assumed'),
  ),
  plantingWindow(
    'autumn',
    '09-01',
    '10-15',
    null,
    practice('early enough to root before the ground freezes; the days are assumed'),
  ),
  plantingWindow('spring-small', '04-15', '06-15', SMALL_PLUG_ML, assumed('small plugs in spring like all others')),
  plantingWindow(
    'autumn-small',
    '09-01',
    '09-20',
    SMALL_PLUG_ML,
    assumed('frost heaves small plugs out of late plantings'),
  ),
];

/** Settings a nursery begins with, each its own to change. */
export const referenceSettings = {
  /** By this day what may not winter must be out. */
  freezeMd: assumed('11-15', 'ground freezing in the Upper Midwest; look at your own records'),
  /** Days before the plant-by day from which the board gives notice. */
  noticeDays: ownSetting(45),
  /** How many times deeper than its greatest top height a milkweed roots; advisory. */
  rootDepthRatio: practice<Range>([2, 3], 'milkweeds; such plants are sold small'),
  /** Bought plugs without a sowing day are taken to have rooted this long before they arrived. */
  boughtPlugsConfinedDays: assumed(70, 'ten weeks'),
  /** Days a client may leave plants standing after pickup or market before they go into the ground. */
  clientLeadDays: assumed(14),
  /** Days bought-in plants and returned pots stand apart. */
  quarantineDays: assumed(14),
  /** Share by which growing medium packs down when pots are filled. */
  mediaSettle: assumed(0.15),
  /** Which shape of container suits which roots. */
  containerShapes: confirmed(
    [
      { roots: 'shallow fibrous', shape: 'short' },
      { roots: 'taproot', shape: 'tall' },
      { roots: 'thick fleshy roots or rhizomes', shape: 'wide' },
    ],
    'Landis, Luna & Dumroese 2014, USDA Forest Service Agriculture Handbook 732, ch. 7',
  ),
} as const satisfies Record<string, Fact<unknown>>;
