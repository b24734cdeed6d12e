/** What stays filled in over a session among the lots: the day, the place and the container of the last entry. */
import { useCallback } from 'react';
import { useSession } from '../../../../lib/api/index.ts';
import { isText, useRemembered } from '../../../../lib/remember.ts';

interface KeptDay {
  on: string;
  /** The day on which it was kept: what was typed yesterday must not slip into today. */
  today: string;
}

const isKeptDay = (kept: unknown): kept is KeptDay => typeof kept === 'object' && kept !== null && 'on' in kept && 'today' in kept && isText(kept.on) && isText(kept.today);

export function useLastDay(): [string, (on: string) => void] {
  const { today } = useSession();
  const [kept, keep] = useRemembered<KeptDay>('lots.day', { on: today, today }, isKeptDay);
  const keepDay = useCallback((on: string) => keep({ on, today }), [keep, today]);
  return [kept.today === today ? kept.on : today, keepDay];
}

/** The last place of one kind of work; potting and moving lead to different places. */
export const useLastPlace = (work: string): [string, (placeId: string) => void] => useRemembered(`lots.${work}.place`, '', isText);

interface KeptContainer {
  id: string;
  name: string;
}

const isKeptContainer = (kept: unknown): kept is KeptContainer | null =>
  kept === null || (typeof kept === 'object' && 'id' in kept && 'name' in kept && isText(kept.id) && isText(kept.name));

export const useLastContainer = (work: string): [KeptContainer | null, (container: KeptContainer | null) => void] => useRemembered(`lots.${work}.container`, null, isKeptContainer);
