/** useRested: a text once it has not changed for so many milliseconds; an empty one at once. */
import { useEffect, useState } from 'react';

export function useRested(text: string, pauseMs: number): string {
  const [rested, setRested] = useState(text);
  useEffect(() => {
    const wait = setTimeout(() => setRested(text), pauseMs);
    return () => clearTimeout(wait);
  }, [text, pauseMs]);
  return text === '' ? '' : rested;
}
