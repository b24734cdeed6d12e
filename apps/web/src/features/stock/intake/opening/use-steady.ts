/** useSteady: functions that stay the same at every drawing and yet see what is newest, so that what is handed them need not be drawn anew. */
import { useRef } from 'react';

export function useSteady<Work extends { [name: string]: (...args: never[]) => void }>(work: Work): Work {
  const newest = useRef(work);
  newest.current = work;
  const steady = useRef<Work | null>(null);
  steady.current ??= Object.fromEntries(
    Object.keys(work).map((name) => [name, (...args: never[]) => newest.current[name]?.(...args)]),
  ) as Work;
  return steady.current;
}
