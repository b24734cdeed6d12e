/**
 * Badge: a state told by a shape and a word, with colour only as the third voice. Shapes: `full` on time, `half` soon, `over` past,
 * `hatched` asleep, `tied` promised, `open` neither. The word is given by the caller.
 */
import type { ReactNode } from 'react';
import './badge.css';

export type BadgeShape = 'full' | 'half' | 'over' | 'hatched' | 'tied' | 'open';
export type BadgeTone = 'living' | 'soon' | 'past' | 'asleep' | 'plain';

export interface BadgeProps {
  shape: BadgeShape;
  tone?: BadgeTone;
  children: ReactNode;
}

const TONE_OF: Record<BadgeShape, BadgeTone> = {
  full: 'living',
  half: 'soon',
  over: 'past',
  hatched: 'asleep',
  tied: 'plain',
  open: 'plain',
};

const SHAPES: Record<BadgeShape, ReactNode> = {
  full: <circle cx="6" cy="6" r="5" fill="currentColor" />,
  half: <path d="M6 1l5 9.5H1z" fill="currentColor" />,
  over: <path d="M1 1h10v10H1z" fill="currentColor" />,
  hatched: <path d="M1 4l3-3M1 8l7-7M2 11l9-9M6 11l5-5M10 11l1-1" stroke="currentColor" strokeWidth="1.4" />,
  tied: <path d="M1 6h10M6 6L3 3M6 6l3-3M6 6L4 10M6 6l2 4" stroke="currentColor" strokeWidth="1.6" fill="none" />,
  open: <circle cx="6" cy="6" r="4.2" fill="none" stroke="currentColor" strokeWidth="1.6" />,
};

export function Badge({ shape, tone, children }: BadgeProps) {
  return (
    <span className={`badge badge-${tone ?? TONE_OF[shape]}`}>
      <svg className="badge-shape" viewBox="0 0 12 12" aria-hidden="true">
        {SHAPES[shape]}
      </svg>
      {children}
    </span>
  );
}
