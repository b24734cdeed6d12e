import type {
  CountKind,
  EntryKind,
  HoldReason,
  LossCause,
  ObservationKind,
  Outside,
  PlantByState,
  PotBand,
  PotLifeBasis,
  RootBallResult,
  RootHabit,
} from '@rootclock/domain';
import { plural } from '../words.ts';

export const plants = (count: number): string => plural(count, { one: '# plant', other: '# plants' });
export const lotsCount = (count: number): string => plural(count, { one: '# lot', other: '# lots' });
export const days = (count: number): string => plural(count, { one: '# day', other: '# days' });

export const bands: Record<PotBand, string> = {
  past: 'past its day',
  due: 'due',
  coming: 'coming up',
  ample: 'has time',
  unlimited: 'no limit',
};
export const states: Record<PlantByState, string> = {
  window: 'the last day of a planting window before the limit',
  'limit-only': 'the limit itself: no planting windows are set',
  'no-window': 'the limit itself: no planting window is left before it',
  'winter-carry': 'carried through winter to the next window',
  unlimited: 'no limit',
};
export const causes: Record<LossCause, string> = {
  'looks-dead': 'looks dead',
  winter: 'winter',
  drought: 'drought',
  rot: 'rot',
  pests: 'pests',
  animals: 'animals',
  weather: 'weather',
  mishandled: 'mishandled',
  discarded: 'discarded',
  failed: 'did not take',
  unknown: 'nobody knows',
};
export const holds: Record<HoldReason, string> = {
  quarantine: 'quarantine',
  treated: 'treated',
  'mother-stock': 'mother stock',
  inspector: "inspector's stop",
};
export const countKinds: Record<CountKind, string> = { counted: 'counted', sampled: 'sampled', estimated: 'estimated' };
export const observations: Record<ObservationKind, string> = {
  'root-ball': 'root ball',
  bloom: 'in bloom',
  pest: 'pest or disease',
  dormant: 'dormant',
  thinned: 'thinned',
  height: 'height',
  note: 'note',
};
export const rootBalls: Record<RootBallResult, string> = {
  holds: 'It holds',
  'not-yet': 'Not yet: it falls apart',
  circling: 'Roots circle the pot',
};
export const rootHabits: Record<RootHabit, string> = {
  taproot: 'Plants with a taproot',
  fibrous: 'Plants with fibrous roots',
  rhizome: 'Plants with rhizomes',
  tuber: 'Plants with tubers',
  woody: 'Woody plants',
};
export const outsides: Record<Outside, string> = {
  opening: 'stock on hand',
  bought: 'bought',
  started: 'started',
  found: 'found',
  planted: 'planted',
  sold: 'sold',
  given: 'given away',
  lost: 'lost',
  unexplained: 'unexplained',
};
export const entries: Record<EntryKind, string> = {
  opening: 'On hand at the beginning',
  receive: 'Received',
  start: 'Started',
  count: 'Counted',
  pot: 'Potted',
  'pot-up': 'Potted up',
  convert: 'Converted',
  split: 'Split',
  merge: 'Merged',
  move: 'Moved',
  lose: 'Lost',
  're-identify': 'Re-identified',
  hold: 'Held',
  release: 'Released',
  pull: 'Pulled',
  plant: 'Planted',
  return: 'Brought back',
  sell: 'Sold',
  give: 'Given away',
  observe: 'Observed',
  treat: 'Treated',
  close: 'Closed',
  reverse: 'Taken back',
};
export const sourceKinds: Record<string, string> = {
  'seed-collection': 'seed collection',
  'bought-seed': 'bought seed',
  'mother-plants': 'mother plants',
  'in-ground-bed': 'in-ground bed',
  'bought-plants': 'bought plants',
  unknown: 'unknown',
};

const UNITS = {
  Y: { one: '1 year', other: '# years' },
  M: { one: '1 month', other: '# months' },
  W: { one: '1 week', other: '# weeks' },
  D: { one: '1 day', other: '# days' },
};
/** `P1Y` as "1 year". */
export const span = (iso: string): string =>
  [...iso.matchAll(/(\d+)([YMWD])/g)]
    .map(([, count, unit]) => plural(Number(count), UNITS[unit as keyof typeof UNITS]))
    .join(' ');

export const ruleSince: Record<PotLifeBasis, (since: string) => string> = {
  confined: (since) => `since their roots were confined on ${since}`,
  container: (since) => `since they came into this container on ${since}`,
  'no-winter': () => '',
};
export const rule = {
  limited: (who: string, within: string, since: string, limit: string) =>
    `${who} leave their pots within ${within} ${since}: by ${limit}.`,
  noWinter: (who: string, limit: string) => `${who} may not stand through winter here: out by ${limit}.`,
  thisLot: 'The plants of this lot',
  inContainer: (who: string, container: string) => `${who} in ${container}`,
};
