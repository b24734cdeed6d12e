/** A window in words: from when to when, and for which plants. */
import type { potLife } from '@rootclock/contracts';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';

export function useWindowWords() {
  const { windows: say } = useMessages().rules;
  const { dates, measures } = useFormat();
  return {
    range: ({ opensMd, closesMd }: Pick<potLife.WindowRow, 'opensMd' | 'closesMd'>): string =>
      say.range(dates.yearly(opensMd), dates.yearly(closesMd)),
    whom: ({ maxContainerMl, region }: Pick<potLife.WindowRow, 'maxContainerMl' | 'region'>): string => {
      const parts = [
        maxContainerMl === null ? null : say.upTo(measures.volume(maxContainerMl)),
        region === null ? null : say.inRegion(region),
      ].filter((part) => part !== null);
      return parts.length === 0 ? say.all : parts.join(', ');
    },
  };
}
