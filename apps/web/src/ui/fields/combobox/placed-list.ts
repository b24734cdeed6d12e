/**
 * usePlacedList: keeps an open list beside its field, whatever moves the field: the page or a sheet that scrolls, a sheet that slides in, a
 * keyboard, a sentence that appears above. While it is pressed it stays where it is.
 */
import { type RefObject, useEffect, useState } from 'react';

/** A list is placed again when its offset changes; a hundredth of a pixel is a change and no move. */
const HAIR = 0.01;
const MOST_HAIRS = 50;

/** Answers the offset to place the list with. */
export function usePlacedList(
  line: RefObject<Element | null>,
  { isOpen, isPressed }: { isOpen: boolean; isPressed: boolean },
): number {
  const [hairs, setHairs] = useState(0);
  const [placed, setPlaced] = useState(0);
  if (!isPressed && placed !== hairs) setPlaced(hairs);
  useEffect(() => {
    if (!isOpen) return undefined;
    const place = () => setHairs((before) => (before + 1) % MOST_HAIRS);
    // The list lies in the page and moves with it by itself; but there may be more room for it now.
    const follow = ({ target }: Event) => {
      if (target instanceof Node && target.contains(line.current)) place();
    };
    let before = positionOf(line.current);
    // There is no event for everything that moves a field, so each frame is looked at.
    const look = () => {
      const now = positionOf(line.current);
      if (now !== before) place();
      before = now;
      frame = requestAnimationFrame(look);
    };
    let frame = requestAnimationFrame(look);
    window.addEventListener('scroll', follow, true);
    return () => {
      cancelAnimationFrame(frame);
      window.removeEventListener('scroll', follow, true);
    };
  }, [line, isOpen]);
  return placed * HAIR;
}

/** Where a field lies in the page, to the pixel. */
function positionOf(field: Element | null): string {
  if (!field) return '';
  const { left, top, height } = field.getBoundingClientRect();
  return [left + window.scrollX, top + window.scrollY, height].map(Math.round).join(' ');
}
