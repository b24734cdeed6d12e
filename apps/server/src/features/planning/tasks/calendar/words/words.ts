import type { planning } from '@rootclock/contracts';
import type { TaskKind } from '@rootclock/domain';

/** What a calendar says of a task. It is read far from the app, so each sentence stands alone; it names no client. */
export interface CalendarWords {
  calendarName: (nursery: string) => string;
  title: Record<TaskKind, (task: planning.TaskRow) => string>;
  /** The last day on which it is not late. */
  late: (day: string) => string;
  /** Plants that look dead on a first visit and may not be. */
  dormant: (plants: string[]) => string;
  voleBait: string;
}

/** A day in a language's own words; days are not instants, so that UTC keeps them from slipping to a neighbour. */
export const dayIn = (language: string) => {
  const format = new Intl.DateTimeFormat(language, { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' });
  return (on: string): string => format.format(new Date(`${on}T00:00:00Z`));
};
