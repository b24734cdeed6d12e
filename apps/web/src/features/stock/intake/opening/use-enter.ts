/**
 * useEnter: what Enter in a line of text does inside an element, instead of sending the form. It hears the key after the fields
 * themselves, so that a list that is open has taken its choice by then.
 */
import { useEffect, useRef, type RefObject } from 'react';

export function useEnter(within: RefObject<HTMLElement | null>, onEnter: () => void): void {
  const latest = useRef(onEnter);
  latest.current = onEnter;
  useEffect(() => {
    const hear = (event: KeyboardEvent) => {
      const { target } = event;
      if (
        event.key !== 'Enter' ||
        event.isComposing ||
        !(target instanceof HTMLInputElement) ||
        target.type === 'checkbox' ||
        !within.current?.contains(target)
      )
        return;
      event.preventDefault();
      latest.current();
    };
    document.addEventListener('keydown', hear);
    return () => document.removeEventListener('keydown', hear);
  }, [within]);
}
