import type { BatchUnit } from '@rootclock/domain';
import { plural } from '../words.ts';
import { unitNames } from './words.ts';

const sownAs: Record<BatchUnit, string> = { ...unitNames, tray: 'seeds', pack: 'seeds' };

/** What has come up or rooted, over the days since the start. */
export const course = {
  title: 'What has come up or rooted',
  empty: 'Nothing has been counted yet.',
  chart: (counts: number, earlier: number) =>
    `${plural(counts, { one: 'Chart of # count', other: 'Chart of # counts' })}${earlier > 0 ? plural(earlier, { one: ' beside # earlier batch', other: ' beside # earlier batches' }) : ''}`,
  day: 'Day',
  days: 'Days from start',
  share: 'Of what was sown',
  thisBatch: 'this batch',
  figures: 'The course in figures',
  percentage: 'Came up',
  percentageOf: (share: string, sown: string, unit: BatchUnit) => `${share} of ${sown} ${sownAs[unit]}`,
  meanTime: 'Mean time',
  half: 'Half were up after',
  halves: (coolbear: string, farooq: string) => `${coolbear} (by Coolbear), ${farooq} (by Farooq)`,
  speed: 'Speed',
  speedOf: (perDay: string) => `${perDay} a day (Maguire)`,
  daysOf: (count: string) => `${count} days`,
  restsOn: (counts: number) =>
    `${plural(counts, { one: 'Rests on # count.', other: 'Rests on # counts.' })} What is first seen at a count is booked on that day, and days that nobody counted have none.`,
  noShare: 'Nobody noted how many seeds were sown, so there is no share to set beside other batches.',
  earlier: 'Earlier batches of the plant',
  batch: 'Batch',
  sown: 'Sown',
  sownOf: (sown: string, unit: BatchUnit) => `${sown} ${sownAs[unit]}`,
  last: 'At the last count',
  lastOf: (share: string, days: number) =>
    plural(days, { one: `${share} after # day`, other: `${share} after # days` }),
};
