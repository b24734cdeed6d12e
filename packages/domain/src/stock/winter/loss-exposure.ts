import { type CalendarDate, toDayNumber } from '../../kernel/dates.ts';
import { type Season, SEASONS } from '../../kernel/rough-days.ts';
import { type DayTally, seasonOf } from './day-tally.ts';

/** What the ledger did to plants in pots on one day. */
export interface LedgerDay {
  on: CalendarDate;
  /** Plants that came less those that went. */
  units: number;
  /** Plants lost, whatever the cause but winter: written off, or missed by a count and not found again. */
  lost: number;
  /** Plants that winter took, on the day that was found out. */
  lostToWinter: number;
}

/** How long plants stood, and how many of them were lost. */
export interface Exposure {
  /** Plants times days. */
  plantDays: number;
  losses: number;
}

export interface LossExposure {
  /** By meteorological season. What winter took counts to winter, though it is mostly found out in spring. */
  seasons: Record<Season, Exposure>;
  /** Outside the winter days, and without what winter took: what `expectedLiving` needs. */
  growing: Exposure;
}

const none = (): Exposure => ({ plantDays: 0, losses: 0 });

/**
 * Plant-days and losses over the days of a tally. A plant stands from the day it came to the day before it left. What the ledger did after the tally's
 * end is left out, and nothing may have happened before its beginning. More found than missed in a season is no negative loss, but none.
 * Throws InputError for a day that does not exist.
 */
export function lossExposure(days: readonly LedgerDay[], tally: DayTally): LossExposure {
  const seasons: Record<Season, Exposure> = { spring: none(), summer: none(), autumn: none(), winter: none() };
  const growing = none();
  for (const { on, units, lost, lostToWinter } of days) {
    const day = toDayNumber(on);
    if (day > tally.endDay) continue;
    const since = tally.until(day);
    seasons[seasonOf(on)].losses += lost;
    seasons.winter.losses += lostToWinter;
    if (!tally.isWinter(day)) growing.losses += lost;
    // Each plant that came stands for all days since; each that went takes its own away again.
    for (const season of SEASONS) seasons[season].plantDays += units * since.seasons[season];
    growing.plantDays += units * since.growing;
  }
  for (const exposure of [...SEASONS.map((season) => seasons[season]), growing])
    exposure.losses = Math.max(0, exposure.losses);
  return { seasons, growing };
}
