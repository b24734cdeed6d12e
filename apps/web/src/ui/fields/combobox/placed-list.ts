/**
 * usePlacedList: keeps an open list beside its field, whatever moves the field: the page or a sheet that scrolls, a sheet that slides in, a
 * sentence that appears above. Windows and boxes that change their size are the popover's own to watch.
 */
import { autoUpdate } from '@floating-ui/dom';
import { type RefObject, useEffect, useState } from 'react';

const WATCHED = { ancestorScroll: true, layoutShift: true, ancestorResize: false, elementResize: false };

/** Answers how often the field has moved since its list opened. */
export function usePlacedList(line: RefObject<Element | null>, isOpen: boolean): number {
  const [moves, setMoves] = useState(0);
  useEffect(
    () =>
      isOpen && line.current
        ? autoUpdate(line.current, null, () => setMoves((before) => before + 1), WATCHED)
        : undefined,
    [line, isOpen],
  );
  return moves;
}
