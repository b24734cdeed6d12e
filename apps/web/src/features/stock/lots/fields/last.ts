/** What stays filled in over a session among the lots: the day, the place and the container of the last entry. */
import { useEntryDay } from '../../../../lib/entry-day.ts';
import { isText, useRemembered } from '../../../../lib/remember.ts';

export function useLastDay(): [string, (on: string) => void] {
  const { day, keepDay } = useEntryDay('lots');
  return [day, keepDay];
}

/** The last place of one kind of work; potting and moving lead to different places. */
export const useLastPlace = (work: string): [string, (placeId: string) => void] =>
  useRemembered(`lots.${work}.place`, '', isText);

interface KeptContainer {
  id: string;
  name: string;
}

const isKeptContainer = (kept: unknown): kept is KeptContainer | null =>
  kept === null || (typeof kept === 'object' && 'id' in kept && 'name' in kept && isText(kept.id) && isText(kept.name));

export const useLastContainer = (work: string): [KeptContainer | null, (container: KeptContainer | null) => void] =>
  useRemembered(`lots.${work}.container`, null, isKeptContainer);
