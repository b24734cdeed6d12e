/**
 * usePointerOnList: what a pointer aims at on the list must not go away from under it. Since a pointer came onto the list it keeps its side of
 * the field; while one is down there, until what its lifting sets off is over, nothing may move at all.
 */
import { type PointerEvent, useState } from 'react';

type Side = 'top' | 'bottom';

export interface PointerOnList {
  /** Where the list was when a pointer came onto it; null as long as none did. */
  side: Side | null;
  isPressed: boolean;
  listeners: { onPointerEnter: (event: PointerEvent) => void; onPointerDownCapture: () => void };
}

const ENDS = ['pointerup', 'pointercancel'] as const;

export function usePointerOnList(isOpen: boolean): PointerOnList {
  const [side, setSide] = useState<Side | null>(null);
  const [isPressed, setPressed] = useState(false);
  if (!isOpen && side !== null) setSide(null);
  return {
    side,
    isPressed,
    listeners: {
      onPointerEnter: ({ currentTarget }) => setSide(currentTarget.closest('[data-placement=top]') ? 'top' : 'bottom'),
      // Options keep their presses to themselves, so it is listened to on the way down.
      onPointerDownCapture: () => {
        setPressed(true);
        // After all that the lifting sets off, which the list's own listeners take in first.
        const lift = () =>
          setTimeout(() => {
            setPressed(false);
            for (const end of ENDS) window.removeEventListener(end, lift, true);
          });
        for (const end of ENDS) window.addEventListener(end, lift, true);
      },
    },
  };
}
