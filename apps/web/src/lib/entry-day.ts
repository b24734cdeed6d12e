/**
 * The day of the last entry of one kind of work, so that an evening's papers need it once; today at first. It is kept with the day on which it was
 * kept: what was typed yesterday must not slip into today. This is the only place that remembers a day.
 */
import { useCallback, useState } from 'react';
import { useSession } from './api/index.ts';
import { isText, useRemembered } from './remember.ts';

interface KeptDay {
  on: string;
  today: string;
}

const isKeptDay = (kept: unknown): kept is KeptDay =>
  typeof kept === 'object' && kept !== null && 'on' in kept && 'today' in kept && isText(kept.on) && isText(kept.today);

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
  // A day that was today while the form was open is kept as of itself, also where the server's answer came after midnight.
  const keepDay = useCallback((on: string) => keep({ on, today: on >= openedOn ? on : today }), [keep, openedOn, today]);
  const chooseDay = useCallback((on: string) => keep({ on, today }), [keep, today]);
  return { day: kept.today === today ? kept.on : today, today, keepDay, chooseDay };
}
