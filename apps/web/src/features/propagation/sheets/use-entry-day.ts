import { useSession } from '../../../lib/api/index.ts';
import { isText, useRemembered } from '../../../lib/remember.ts';

/** The day of the last entry of this session, so that an evening's papers need it once; today at first. */
export function useEntryDay(): { day: string; today: string; keepDay: (day: string) => void } {
  const { today } = useSession();
  const [day, keepDay] = useRemembered('propagation.day', today, isText);
  return { day: day > today ? today : day, today, keepDay };
}
