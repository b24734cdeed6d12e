import type { CalendarDate } from '../kernel/dates.ts';
import { type MonthDay, nextMonthDay } from '../kernel/month-days.ts';

/** Where the season of a new nursery ends until it says otherwise: before hard frosts of the Upper Midwest. */
const USUAL_SEASON_END: MonthDay = '10-31';

/** The end of a new nursery's season: on or after today, the nursery's own day. */
export const firstSeasonEnd = (today: CalendarDate): CalendarDate => nextMonthDay(today, USUAL_SEASON_END);

/** The end of a season that may have passed: the same day of the year again, on or after today. One that lies ahead stays as it is. */
export const seasonEndAhead = (endOn: CalendarDate, today: CalendarDate): CalendarDate =>
  endOn >= today ? endOn : nextMonthDay(today, endOn.slice(5));
