/**
 * useHeldOptions: a list that answers late, kept still under eye and finger. An open list changes only when what was typed changed and its
 * answer is there; till then the older options are shown but not to be chosen. While a finger is down nothing moves at all, since what is
 * under it when it is lifted counts as chosen.
 */
import { useState } from 'react';

export interface Answering<Offered> {
  options: readonly Offered[];
  /** The text that these options answer; null before there is any answer. */
  answers: string | null;
}

export interface HeldOptions<Offered> {
  shown: readonly Offered[];
  /** Whether what is shown answers what was typed. */
  isCurrent: boolean;
  /** Told of each press into the list. */
  onPointerDown: () => void;
}

export function useHeldOptions<Offered>({ options, answers }: Answering<Offered>, wanted: string, isOpen: boolean): HeldOptions<Offered> {
  const [held, setHeld] = useState<Answering<Offered>>({ options: [], answers: null });
  const [isPressed, setPressed] = useState(false);
  const mayChange = !isPressed && (!isOpen || held.answers !== wanted);
  if (mayChange && answers === wanted && held.options !== options) setHeld({ options, answers });
  return {
    shown: held.options,
    isCurrent: held.answers === wanted,
    onPointerDown: () => {
      setPressed(true);
      // After all that the lifting sets off, which the list's own listeners take in first.
      const lift = () => setTimeout(() => {
        setPressed(false);
        for (const end of ENDS) window.removeEventListener(end, lift, true);
      });
      for (const end of ENDS) window.addEventListener(end, lift, true);
    },
  };
}

const ENDS = ['pointerup', 'pointercancel'] as const;
