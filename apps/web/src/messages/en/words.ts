import { daysOf } from '../days.ts';
import { pluralsOf } from '../plural.ts';
import { gramsOf, sharesOf } from '../weights.ts';

/** The counting, dating and weighing of this language, for its message files. */
export const plural = pluralsOf('en');
export const days = daysOf('en');
export const grams = gramsOf('en');
export const percent = sharesOf('en');
