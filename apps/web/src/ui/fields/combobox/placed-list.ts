/**
 * usePlacedList: keeps an open list beside its field, whatever scrolls: the page, a sheet, or either of them to make room for a keyboard. While
 * it is pressed it stays where it is.
 */
import { type RefObject, useEffect, useState } from 'react';

/** A list is placed again when its offset changes; a hundredth of a pixel is a change and no move. */
const HAIR = 0.01;
const MOST_HAIRS = 50;

/** Answers the offset to place the list with. */
export function usePlacedList(line: RefObject<Element | null>, { isOpen, isPressed }: { isOpen: boolean; isPressed: boolean }): number {
  const [hairs, setHairs] = useState(0);
  const [placed, setPlaced] = useState(0);
  if (!isPressed && placed !== hairs) setPlaced(hairs);
  useEffect(() => {
    if (!isOpen) return undefined;
    const follow = ({ target }: Event) => {
      if (target instanceof Node && target.contains(line.current)) setHairs((before) => (before + 1) % MOST_HAIRS);
    };
    window.addEventListener('scroll', follow, true);
    return () => window.removeEventListener('scroll', follow, true);
  }, [line, isOpen]);
  return placed * HAIR;
}
