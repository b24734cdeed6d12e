/** Dates, numbers and measures as this reader and this nursery want them: `const { dates, numbers, measures } = useFormat()`. */
import { useMemo } from 'react';
import { useLanguage } from '../../messages/index.ts';
import { useSession } from '../api/session.ts';
import { datesIn } from './dates.ts';
import { measuresIn } from './measures.ts';
import { numbersIn } from './numbers.ts';

export function useFormat() {
  const language = useLanguage();
  const { today, nursery } = useSession();
  return useMemo(
    () => ({
      dates: datesIn(language, today, nursery.zone),
      numbers: numbersIn(language),
      measures: measuresIn(nursery.units, language),
    }),
    [language, today, nursery.zone, nursery.units],
  );
}
