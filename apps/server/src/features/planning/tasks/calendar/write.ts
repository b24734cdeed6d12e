import type { planning } from '@rootclock/contracts';
import ical, { ICalCalendarMethod, ICalEventTransparency } from 'ical-generator';
import { en } from './words/en.ts';
import { es } from './words/es.ts';
import { type CalendarWords, dayIn } from './words/words.ts';

const WORDS = { en, es };
export type CalendarLanguage = keyof typeof WORDS;
export const CALENDAR_LANGUAGES = ['en', 'es'] as const satisfies readonly CalendarLanguage[];

/** How often a phone should ask again, in seconds. */
const ASK_AGAIN_SECONDS = 3600;

export interface CalendarParts {
  nurseryId: string;
  nurseryName: string;
  language: CalendarLanguage;
  /** When the calendar is written: the stamp of each event. */
  now: Date;
  tasks: readonly planning.TaskRow[];
}

/**
 * Open tasks as a calendar of whole days (RFC 5545). A day is written as a date without a time or zone, so that it is the same day for a phone
 * anywhere; the writer's own zone plays no part, since the date is handed over as UTC and read back as such. A task keeps its UID as long as it keeps its key.
 */
export function writeCalendar({ nurseryId, nurseryName, language, now, tasks }: CalendarParts): string {
  const words = WORDS[language];
  const calendar = ical({
    name: escaped(words.calendarName(nurseryName)),
    prodId: { company: 'Rootclock', product: 'Tasks', language: language.toUpperCase() },
    method: ICalCalendarMethod.PUBLISH,
    ttl: ASK_AGAIN_SECONDS,
  });
  for (const task of tasks) {
    const title = words.title[task.kind](task);
    const description = describe(task, words, dayIn(language));
    calendar.createEvent({
      id: `${task.key.replaceAll('/', '.')}@${nurseryId}.rootclock`,
      stamp: now,
      start: new Date(`${task.dueOn}T00:00:00Z`),
      allDay: true,
      timezone: null,
      summary: task.plantName ? `${title} (${task.plantName})` : title,
      transparency: ICalEventTransparency.TRANSPARENT,
      ...(task.places.length > 0
        ? { location: task.places.map(({ code, name }) => (name === code ? code : `${code} (${name})`)).join(', ') }
        : {}),
      ...(description ? { description } : {}),
    });
  }
  return calendar.toString();
}

function describe(
  { kind, lateOn, dueOn, details }: planning.TaskRow,
  words: CalendarWords,
  day: (on: string) => string,
): string {
  return [
    lateOn !== null && lateOn > dueOn ? words.late(day(lateOn)) : '',
    details.dormant ? words.dormant(details.dormant) : '',
    kind === 'vole-bait' ? words.voleBait : '',
  ]
    .filter((sentence) => sentence !== '')
    .join('\n');
}

/** The writer escapes the texts of events and leaves the calendar's own name as it is (RFC 5545, 3.3.11). */
const escaped = (text: string): string => text.replaceAll(/[\\;,]/g, String.raw`\$&`);
