import type { IssueSentences } from '../errors.ts';
import { plural } from './words.ts';

export const issues: IssueSentences = {
  required: () => 'This is needed.',
  'not-a-number': () => 'Enter a number in figures, such as 12.',
  'not-whole': () => 'Enter a whole number, without a fraction.',
  'too-small': ({ least = 0 }) => `Enter ${least} or more.`,
  'too-big': ({ most = 0 }) => `Enter ${most} or less.`,
  'too-long': ({ most = 0 }) => plural(most, { one: 'Use at most # character.', other: 'Use at most # characters.' }),
  'too-short': ({ least = 0 }) =>
    plural(least, { one: 'Use at least # character.', other: 'Use at least # characters.' }),
  'not-a-date': () => 'Enter a day that exists.',
  'far-year': ({ least = 0, most = 0 }) => `Choose a year from ${least} to ${most}.`,
  'broken-text': () => 'This has a character that can’t be saved. Delete the text and type it again.',
  'too-many-alternatives': ({ most = 0 }) =>
    `An order can name ${most} alternatives at once. Name fewer, or add lines later.`,
  'not-a-share': () => 'Enter a share from 0 to 100%.',
  'not-a-purity': () => 'Enter a purity from 0.1 to 100%.',
  'not-a-choice': () => 'Choose one from the list.',
  'wrong-form': () => 'This is not written as it should be.',
  'unknown-field': () => 'The server does not know this field. Reload the page.',
};
