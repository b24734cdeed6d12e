import type { ErrorSentences } from '../../errors.ts';
import { days } from '../words.ts';

export const potLife = {
  'rule-exists': () => 'A rule of this kind for the same plants is there already. Change that one, or retire it first.',
  'rule-retired': () => 'This rule was retired. Add a new one instead.',
  'window-retired': () => 'This planting window was retired. Add a new one instead.',
  'window-exists': ({ opensMd, closesMd }) =>
    `There is a window from ${days.yearly(opensMd)} to ${days.yearly(closesMd)} for the same plants already.`,
} satisfies Partial<ErrorSentences>;
