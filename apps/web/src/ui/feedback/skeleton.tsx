/**
 * Skeleton: the shape of what is coming, shown only when it takes longer than 300 ms, so that a quick answer never flickers.
 * Assistive technology hears "Loading" instead.
 */
import { useEffect, useState } from 'react';
import { useMessages } from '../../messages/index.ts';
import './skeleton.css';

const PATIENCE_MS = 300;

/** True once the wait has lasted long enough to be worth showing. */
export function useLongWait(waiting: boolean): boolean {
  const [long, setLong] = useState(false);
  useEffect(() => {
    if (!waiting) {
      setLong(false);
      return;
    }
    const wait = setTimeout(() => setLong(true), PATIENCE_MS);
    return () => clearTimeout(wait);
  }, [waiting]);
  return long && waiting;
}

export function Skeleton({ lines = 4 }: { lines?: number }) {
  const { ui } = useMessages();
  const show = useLongWait(true);
  if (!show) return null;
  return (
    <div className="skeleton" role="status">
      <span className="only-heard">{ui.loading}</span>
      {Array.from({ length: lines }, (_, index) => (
        <span key={index} className="skeleton-line" aria-hidden="true" />
      ))}
    </div>
  );
}
