/**
 * The day of the last entry of one kind of work, so that an evening's papers need it once; today at first, and again tomorrow. This is the only place
 * that remembers a day.
 */
import { useCallback, useState } from 'react';
import { useSession } from './api/index.ts';
import { dayToBegin, isKeptDay, type KeptDay, keptLate } from './kept-day.ts';
import { useRemembered } from './remember.ts';

export interface EntryDay {
  day: string;
  today: string;
  /** Keeps the day of an entry that the server has answered, maybe long after it was made. */
  keepDay: (on: string) => void;
  /** Keeps a day as it is chosen, where the day stands beside several entries and not in a form of its own. */
  chooseDay: (on: string) => void;
}

export function useEntryDay(work: string): EntryDay {
  const { today } = useSession();
  const [openedOn] = useState(today);
  const [kept, keep] = useRemembered<KeptDay>(`${work}.day`, { on: today, today }, isKeptDay);
  const keepDay = useCallback((on: string) => keep(keptLate(on, openedOn, today)), [keep, openedOn, today]);
  const chooseDay = useCallback((on: string) => keep({ on, today }), [keep, today]);
  return { day: dayToBegin(kept, today), today, keepDay, chooseDay };
}
