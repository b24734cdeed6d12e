/** useRested: a text once it has not changed for so many milliseconds, so that a fast typist asks once a name and not once a letter; an empty one at once. */
import { useEffect, useState } from 'react';

const PAUSE_MS = 180;

export function useRested(text: string, pauseMs = PAUSE_MS): string {
  const [rested, setRested] = useState(text);
  useEffect(() => {
    const wait = setTimeout(() => setRested(text), pauseMs);
    return () => clearTimeout(wait);
  }, [text, pauseMs]);
  return text === '' ? '' : rested;
}
