/**
 * useHeldOptions: a list that answers late, kept still under eye and finger. An open list changes only when what was typed changed and its
 * answer is there; till then the older options are shown but not to be chosen. While it is pressed nothing changes at all.
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
}

export function useHeldOptions<Offered>(
  { options, answers }: Answering<Offered>,
  wanted: string,
  { isOpen, isPressed }: { isOpen: boolean; isPressed: boolean },
): HeldOptions<Offered> {
  const [held, setHeld] = useState<Answering<Offered>>({ options: [], answers: null });
  const mayChange = !isPressed && (!isOpen || held.answers !== wanted);
  if (mayChange && answers === wanted && held.options !== options) setHeld({ options, answers });
  return { shown: held.options, isCurrent: held.answers === wanted };
}
