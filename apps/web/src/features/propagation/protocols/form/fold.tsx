/** Fold: fields that are put away until somebody wants them, and come out by themselves when something in them is wrong. */
import { useEffect, useState, type ReactNode } from 'react';

export interface FoldProps {
  words: ReactNode;
  startsOpen?: boolean;
  hasError?: boolean;
  children: ReactNode;
}

export function Fold({ words, startsOpen = false, hasError = false, children }: FoldProps) {
  const [open, setOpen] = useState(startsOpen);
  useEffect(() => {
    if (hasError) setOpen(true);
  }, [hasError]);
  return (
    <details className="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words}</summary>
      <div className="stack fold-inside">{children}</div>
    </details>
  );
}
