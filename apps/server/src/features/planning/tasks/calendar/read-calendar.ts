import { addDays, EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { query } from '../../../../trpc/operation.ts';
import { taskRow } from '../list-tasks.ts';
import { loadTasks } from '../load.ts';
import { readNurseryState } from './reads.ts';
import { CALENDAR_LANGUAGES, writeCalendar } from './write.ts';

/** A little over a year, so that each yearly task is always in it. */
const AHEAD_DAYS = 400;

/**
 * The open tasks as a calendar, or none where the reader has it already. What it holds follows from the nursery's version, the day and the language;
 * these are its tag, so that a phone that asks every hour costs one small statement. Reached by its own address, never through the router.
 */
export const readCalendar = query({
  name: 'readCalendar',
  input: z.strictObject({ language: z.enum(CALENDAR_LANGUAGES), known: z.nullable(z.string()) }),
  roles: EVERYONE,
  read: async (context, { language, known }): Promise<{ tag: string; text: string | null }> => {
    const { nurseryId, today, now } = context;
    const { name, version } = await readNurseryState(context);
    const tag = `W/"${version}-${today}-${language}"`;
    if (known?.includes(tag)) return { tag, text: null };
    const loaded = await loadTasks(context, today, addDays(today, AHEAD_DAYS));
    const tasks = loaded.tasks.filter(({ doneOn }) => doneOn === null).map((task) => taskRow(task, loaded, today));
    return { tag, text: writeCalendar({ nurseryId, nurseryName: name, language, now, tasks }) };
  },
});
