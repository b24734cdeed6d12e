/** Calendar dates in the words of one language. They are days, not instants: UTC keeps them from slipping to a neighbour. */
export interface DayWords {
  /** "14 April 2026", in the language's own order. */
  long(on: string): string;
  /** "14 Apr", with the year where it is not the one given. */
  short(on: string, thisYear?: number): string;
  /** "April 2026" */
  month(on: string): string;
  /** "14 April" from `04-14`, a day that comes every year. */
  yearly(monthDay: string): string;
  /** An instant by the nursery's clock once `sayInstantsIn` has told it, since a bench is closed by that clock wherever its reader is. */
  instant(at: string): string;
}

let zone: string | undefined;

/** The zone by whose clock instants are said from now on; until then it is this device's. */
export function sayInstantsIn(next: string): void {
  zone = next;
}

const instantOf = (on: string): Date => new Date(`${on}T00:00:00Z`);

export function daysOf(language: string): DayWords {
  const style = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat(language, { ...options, timeZone: 'UTC' });
  const long = style({ day: 'numeric', month: 'long', year: 'numeric' });
  const short = style({ day: 'numeric', month: 'short' });
  const shortWithYear = style({ day: 'numeric', month: 'short', year: 'numeric' });
  const yearly = style({ day: 'numeric', month: 'long' });
  const month = style({ month: 'long', year: 'numeric' });
  return {
    long: (on) => long.format(instantOf(on)),
    short: (on, thisYear) => (Number(on.slice(0, 4)) === thisYear ? short : shortWithYear).format(instantOf(on)),
    month: (on) => month.format(instantOf(on)),
    instant: (at) =>
      new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short', timeZone: zone }).format(
        new Date(at),
      ),
    // A leap year, so that 29 February is a day like others.
    yearly: (monthDay) => yearly.format(instantOf(`2000-${monthDay}`)),
  };
}
